using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.RealLayUp;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class LayUpCheckTests
{
    private static InfusionPlan OfPlies(Action<Zone> change, params Ply[] plies) => StraightStrip.With(plan =>
    {
        plan.Preform.Zones[0] = new Zone { Name = "skin", Porosity = 0.5, LayUp = new LayUp { Plies = { plies } } };
        change(plan.Preform.Zones[0]);
    });

    [Fact]
    public void Check_PliesAlone_GiveTheThickness()
    {
        InfusionPlan plan = OfPlies(_ => { }, Ply(0), Ply(45, 0.5), Ply(-45, 0.5));
        plan.Preform.Zones[0].LayUp.Plies[0].Count = 3;

        PlanCheck check = PlanChecker.Check(plan);

        FaultsOf(plan).ShouldBeEmpty();
        check.Plan.Preform.Zones[0].ThicknessMm.ShouldBe(2.8);
        check.Plan.Preform.Zones[0].LayUp.Plies[1].Count.ShouldBe(1);
        check.Plan.Preform.Zones[0].LayUp.Plies[1].Permeability.K3M2.ShouldBe(4e-12, 1e-24);
    }

    [Fact]
    public void Check_PliesAndPermeability_AskForOne() =>
        FaultsOf(OfPlies(zone => zone.Permeability = new Permeability { K1M2 = 1e-10 }, Ply(0))).ShouldHaveSingleItem().ShouldBe(
            new Fault("preform.zones[0].permeability", "zone 'skin' gives both permeability and layUp; give one of them: the plies make the zone's permeability."));

    [Fact]
    public void Check_ThicknessThatIsNotThatOfThePlies_IsRefused() =>
        FaultsOf(OfPlies(zone => zone.ThicknessMm = 3, Ply(0), Ply(90))).ShouldHaveSingleItem().ShouldBe(
            new Fault("preform.zones[0].thicknessMm", "thicknessMm of zone 'skin' is 3 mm, but its plies are 1.2 mm thick together. Leave it out: the plies decide."));

    [Fact]
    public void Check_LayUpWithoutPlies_IsRefused() =>
        FaultsOf(OfPlies(_ => { })).ShouldHaveSingleItem().Path.ShouldBe("preform.zones[0].layUp.plies");

    [Fact]
    public void Check_PlyWithoutPermeability_IsRefused() =>
        FaultsOf(OfPlies(zone => zone.LayUp.Plies[1].Permeability = null, Ply(0), Ply(90))).ShouldHaveSingleItem().ShouldBe(new Fault(
            "preform.zones[0].layUp.plies[1].permeability",
            "preform.zones[0].layUp.plies[1] ('biaxial') has no permeability; give that of the ply along and across its own direction, for example { \"k1M2\": 2e-10, \"k2M2\": 1e-10 }."));

    [Fact]
    public void Check_PlyTurnedTwice_IsRefused() =>
        FaultsOf(OfPlies(zone => zone.LayUp.Plies[0].Permeability.AngleDeg = 45, Ply(45))).ShouldHaveSingleItem().Text.ShouldBe(
            "preform.zones[0].layUp.plies[0] ('biaxial') is turned twice: by its angleDeg and by permeability.angleDeg, 45°. Write the angle into angleDeg of the ply alone.");

    [Theory]
    [InlineData(0)]
    [InlineData(201)]
    [InlineData(-1)]
    public void Check_CountOfPlies_LiesBetweenOneAndTwoHundred(int count) =>
        FaultsOf(OfPlies(zone => zone.LayUp.Plies[0].Count = count, Ply(0))).ShouldHaveSingleItem().Text.ShouldBe(
            $"preform.zones[0].layUp.plies[0].count is {count}; it must lie between 1 and 200.");

    [Fact]
    public void Check_PliesThickerThanAnyPanel_AreRefused() =>
        FaultsOf(OfPlies(zone => zone.LayUp.Plies[0].Count = 200, Ply(0, 1.5))).ShouldHaveSingleItem().Text.ShouldStartWith(
            "the plies of zone 'skin' are 300 mm thick together; at most 200 mm are computed.");

    /// <summary>Six plies of glass, known by the weight and the density of their fibre.</summary>
    internal static Zone GlassZone() => new()
    {
        Name = "skin",
        FibreVolumeFraction = 0.5,
        LayUp = new LayUp
        {
            Plies = { new Ply { Cloth = "glass", Count = 6, ArealWeightGPerM2 = 600, FibreDensityKgPerM3 = 2560, Permeability = new Permeability { K1M2 = 1e-10 } } },
        },
    };

    private static InfusionPlan OfGlass(Action<Zone> change) => StraightStrip.With(plan =>
    {
        plan.Preform.Zones[0] = GlassZone();
        change(plan.Preform.Zones[0]);
    });

    [Fact]
    public void Check_PliesKnownByTheirFibre_TakeTheirThicknessFromIt()
    {
        PlanCheck check = PlanChecker.Check(OfGlass(_ => { }));

        check.Faults.ShouldBeEmpty();
        check.Plan.Preform.Zones[0].LayUp.Plies[0].ThicknessMm.ShouldBe(0.46875);
        check.Plan.Preform.Zones[0].ThicknessMm.ShouldBe(2.8125);
    }

    [Fact]
    public void Check_ThicknessAsRoundedOnADataSheet_AgreesWithTheFibre() =>
        FaultsOf(OfGlass(zone => zone.LayUp.Plies[0].ThicknessMm = 0.47)).ShouldBeEmpty();

    [Fact]
    public void Check_ThicknessThatTheFibreDoesNotMake_IsRefused() =>
        FaultsOf(OfGlass(zone => zone.LayUp.Plies[0].ThicknessMm = 0.6)).ShouldHaveSingleItem().ShouldBe(new Fault(
            "preform.zones[0].layUp.plies[0].thicknessMm",
            "thicknessMm of preform.zones[0].layUp.plies[0] ('glass') is 0.6 mm, but 600 g/m² of fibre come to 0.469 mm at the zone's fibre volume fraction. "
            + "Leave thicknessMm out, or put weight, density or fraction right."));

    [Fact]
    public void Check_ZoneThicknessThatTheFibreDoesNotMake_IsRefused() =>
        FaultsOf(OfGlass(zone => zone.ThicknessMm = 3)).ShouldHaveSingleItem().Text.ShouldBe(
            "thicknessMm of zone 'skin' is 3 mm, but its plies are 2.8125 mm thick together. Leave it out: the plies decide.");

    [Fact]
    public void Check_WeightOrDensityAlone_AsksForTheOther()
    {
        FaultsOf(OfGlass(zone => zone.LayUp.Plies[0].ClearFibreDensityKgPerM3())).ShouldHaveSingleItem().Path.ShouldBe("preform.zones[0].layUp.plies[0].fibreDensityKgPerM3");
        FaultsOf(OfGlass(zone => zone.LayUp.Plies[0].ClearArealWeightGPerM2())).ShouldHaveSingleItem().Path.ShouldBe("preform.zones[0].layUp.plies[0].arealWeightGPerM2");
    }

    [Fact]
    public void Check_VeilThinnerThanAnyLayUp_IsRefused() =>
        FaultsOf(OfGlass(zone =>
        {
            zone.LayUp.Plies[0].Count = 1;
            zone.LayUp.Plies[0].ArealWeightGPerM2 = 30;
        })).ShouldHaveSingleItem().Text.ShouldStartWith("the plies of zone 'skin' are only 0.0234375 mm thick together");

    [Fact]
    public void Check_TooManyPlies_AreRefusedBeforeAnythingElse()
    {
        Fault fault = FaultsOf(OfPlies(_ => { }, [.. Enumerable.Repeat(0, 201).Select(_ => Ply(0))])).ShouldHaveSingleItem();

        fault.Reason.ShouldBe(ErrorReason.TooLarge);
        fault.Path.ShouldBe("preform.zones[0].layUp.plies");
    }
}

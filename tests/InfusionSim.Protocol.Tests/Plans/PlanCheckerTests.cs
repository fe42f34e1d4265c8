using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;
using static InfusionSim.Protocol.Tests.Plans.StraightStrip;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class PlanCheckerTests
{
    [Fact]
    public void Check_ExamplePlan_FindsNothing()
    {
        PlanCheck check = PlanChecker.Check(Plan());

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldBeEmpty();
        check.Plan.ShouldBe(With(plan => plan.Vents[0].Kind = VentKind.Tube));
    }

    [Fact]
    public void Check_PlanWithoutNames_LeavesThePlanAsItWas()
    {
        InfusionPlan plan = With(given => given.Feeds[0].Name = "");

        PlanChecker.Check(plan).Plan.Feeds[0].Name.ShouldBe("F1");

        plan.Feeds[0].Name.ShouldBe("");
    }

    public static TheoryData<string, string, string> BadNumbers => new()
    {
        { "porosity", "preform.zones[0].porosity", "porosity of zone 'skin' is 1.2; it must lie between 0.05 and 0.98. Give a fraction, not per cent." },
        { "viscosity", "resin.viscosityPaS", "resin.viscosityPaS is 300 Pa·s; it must lie between 0.001 and 100 Pa·s. 300 mPa·s is 0.3." },
        { "density", "resin.densityKgPerM3", "resin.densityKgPerM3 is 1.1 kg/m³; it must lie between 500 and 3000 kg/m³. 1.1 g/cm³ is 1100." },
        { "thickness", "preform.zones[0].thicknessMm", "thicknessMm of zone 'skin' is 0.003 mm; it must lie between 0.05 and 200 mm. Lengths are millimetres: 0.003 m is 3." },
        { "permeability", "preform.zones[0].permeability.k1M2", "preform.zones[0].permeability.k1M2 is 0.0001 m²; it must lie between 1e-16 and 1e-6 m². 0.0001 mm² is 1e-10." },
        { "gauge", "bag.pressureMbarAbs", "bag.pressureMbarAbs is -950 mbar; it must lie between 0 and 1100 mbar. That reads like a gauge: with 1013.25 mbar of air the absolute pressure is 63.25 mbar." },
        { "gaugeBar", "bag.pressureMbarAbs", "bag.pressureMbarAbs is -0.95 mbar; it must lie between 0 and 1100 mbar. That reads like a gauge in bar: with 1013.25 mbar of air the absolute pressure is 63.25 mbar." },
        { "noDrive", "bag.pressureMbarAbs", "bag.pressureMbarAbs is 1013.25 mbar, not below the air around the bag (1013.25 mbar): nothing drives the resin. It must lie between 0 and 1013.25 mbar; a good vacuum is below 50." },
        { "factor", "preform.permeabilityFactor", "preform.permeabilityFactor is 0.5; it must lie between 1 and 10. It is a factor: 1.5 means that two shots in three lie between K/1.5 and K·1.5." },
        { "nan", "resin.gelTimeMin", "resin.gelTimeMin is not a number; it must lie between 0.1 and 10080 min. Give a finite number." },
        { "infinite", "feeds[0].path.points[1].yMm", "feeds[0].path.points[1].yMm is infinite; it must lie between -100000 and 100000 mm. Give a finite number." },
        { "late", "resin.mixToOpenMin", "resin.mixToOpenMin is 60 min, but the resin gels 60 min after mixing: it is solid before the feed opens. It must be below 60 min; open earlier or take a slower resin." },
        { "missing", "resin.viscosityPaS", "resin.viscosityPaS is missing; give it in Pa·s, for example \"viscosityPaS\": 0.3." },
        { "both", "preform.zones[0].fibreVolumeFraction", "zone 'skin' gives both porosity and fibreVolumeFraction; give one of them: porosity is 1 less the fibre volume fraction." },
        { "neither", "preform.zones[0].porosity", "zone 'skin' gives neither porosity nor fibreVolumeFraction; give one of them as a fraction, for example \"porosity\": 0.5." },
    };

    private static readonly Dictionary<string, Action<InfusionPlan>> Slips = new()
    {
        ["porosity"] = plan => plan.Preform.Zones[0].Porosity = 1.2,
        ["viscosity"] = plan => plan.Resin.ViscosityPaS = 300,
        ["density"] = plan => plan.Resin.DensityKgPerM3 = 1.1,
        ["thickness"] = plan => plan.Preform.Zones[0].ThicknessMm = 0.003,
        ["permeability"] = plan => plan.Preform.Zones[0].Permeability.K1M2 = 1e-4,
        ["gauge"] = plan => plan.Bag.PressureMbarAbs = -950,
        ["gaugeBar"] = plan => plan.Bag.PressureMbarAbs = -0.95,
        ["noDrive"] = plan => plan.Bag.PressureMbarAbs = 1013.25,
        ["factor"] = plan => plan.Preform.PermeabilityFactor = 0.5,
        ["nan"] = plan => plan.Resin.GelTimeMin = double.NaN,
        ["infinite"] = plan => plan.Feeds[0].Path.Points[1].YMm = double.PositiveInfinity,
        ["late"] = plan => plan.Resin.MixToOpenMin = 60,
        ["missing"] = plan => plan.Resin.ClearViscosityPaS(),
        ["both"] = plan => plan.Preform.Zones[0].FibreVolumeFraction = 0.5,
        ["neither"] = plan => plan.Preform.Zones[0].ClearPorosity(),
    };

    [Theory]
    [MemberData(nameof(BadNumbers))]
    public void Check_BadNumber_SaysWhatValueRangeAndWhatToDo(string slip, string path, string text)
    {
        IReadOnlyList<Fault> faults = PlanChecker.Check(With(Slips[slip])).Faults;

        faults.ShouldHaveSingleItem().ShouldBe(new Fault(path, text));
    }

    [Fact]
    public void Check_SeveralFaults_AnswersAllAtOnce()
    {
        PlanCheck check = PlanChecker.Check(With(plan =>
        {
            plan.Preform.Zones[0].Porosity = 50;
            plan.Resin.ViscosityPaS = 300;
            plan.Bag.PressureMbarAbs = -950;
            plan.Feeds.Clear();
            plan.Preform.Cutouts.Add(RingOf((700, 0), (800, 0), (800, 100)));
        }));

        check.Faults.Select(fault => fault.Path).ShouldBe(
            ["preform.zones[0].porosity", "resin.viscosityPaS", "bag.pressureMbarAbs", "feeds", "preform.cutouts[0]"], ignoreOrder: true);
    }

    [Fact]
    public void Check_EmptyPlan_NamesEveryPartThatIsMissing() =>
        PlanChecker.Check(new InfusionPlan()).Faults.Select(fault => fault.Path).ShouldBe(["preform", "resin", "bag", "feeds"], ignoreOrder: true);

    [Fact]
    public void Check_NoPlan_SaysSo() => PlanChecker.Check(null).Faults.ShouldHaveSingleItem().Path.ShouldBe("plan");

    [Fact]
    public void Check_HardlyAnyVacuum_Warns()
    {
        PlanCheck check = PlanChecker.Check(With(plan => plan.Bag.PressureMbarAbs = 950));

        check.Faults.ShouldBeEmpty();
        check.Warnings.ShouldHaveSingleItem().ShouldBe(
            "bag.pressureMbarAbs is 950: almost no vacuum (ambient 1013.25). If your gauge shows −950 mbar, the absolute pressure is 63.25 mbar.");
    }

    [Fact]
    public void Check_ViscosityThatReadsLikeMillipascalSeconds_Warns() =>
        PlanChecker.Check(With(plan => plan.Resin.ViscosityPaS = 50)).Warnings.ShouldHaveSingleItem().ShouldContain("write 0.05");

    [Fact]
    public void Check_NoVent_IsAllowed() => PlanChecker.Check(With(plan => plan.Vents.Clear())).IsSound.ShouldBeTrue();

    [Fact]
    public void Check_NoNames_GivesDefaultNamesThatAreFree()
    {
        InfusionPlan plan = PlanChecker.Check(With(given =>
        {
            given.Feeds[0].Name = "V1";
            given.Vents[0].Name = " ";
            given.TimingMarks[0].Name = "";
            given.Preform.Zones[0].Name = "";
        })).Plan;

        (plan.Feeds[0].Name, plan.Vents[0].Name, plan.TimingMarks[0].Name, plan.Preform.Zones[0].Name).ShouldBe(("V1", "V2", "M1", "Z1"));
    }

    [Fact]
    public void Check_FeedAndVentOfOneName_IsRefused() =>
        PlanChecker.Check(With(plan => plan.Vents[0].Name = "F1")).Faults.ShouldHaveSingleItem().Path.ShouldBe("vents[0].name");

    [Theory]
    [InlineData("\u001b[2J")]
    [InlineData("a\nb")]
    public void Check_NameThatSteersATerminal_IsRefused(string name) =>
        PlanChecker.Check(With(plan => plan.Feeds[0].Name = name)).Faults.ShouldHaveSingleItem().Path.ShouldBe("feeds[0].name");

    [Fact]
    public void Check_LongTexts_AreRefused() => PlanChecker.Check(With(plan =>
    {
        plan.Title = new string('a', 201);
        plan.Vents[0].Name = new string('b', 61);
    })).Faults.Select(fault => (fault.Path, fault.Reason)).ShouldBe([("title", ErrorReason.TooLarge), ("vents[0].name", ErrorReason.TooLarge)]);

    [Theory]
    [InlineData(90)]
    [InlineData(-180)]
    [InlineData(33)]
    public void Check_ClothAtAnyAngle_IsAllowed(double angle) => PlanChecker.Check(With(plan =>
        plan.Preform.Zones[0].Permeability = new Permeability { K1M2 = 2e-10, K2M2 = 1e-10, AngleDeg = angle })).IsSound.ShouldBeTrue();

    [Fact]
    public void Check_FieldsOfANewerContract_AreRefused()
    {
        // Field 20 of the plan, a varint: what a newer client may send.
        byte[] bytes = [.. Google.Protobuf.MessageExtensions.ToByteArray(Plan()), 0xA0, 0x01, 0x01];

        Fault fault = PlanChecker.Check(InfusionPlan.Parser.ParseFrom(bytes)).Faults.ShouldHaveSingleItem();

        fault.Reason.ShouldBe(ErrorReason.NotComputedYet);
        fault.Text.ShouldContain("does not know");
    }

    [Fact]
    public void Check_VentKindThatIsNone_IsRefused() =>
        PlanChecker.Check(With(plan => plan.Vents[0].Kind = (VentKind)9)).Faults.ShouldHaveSingleItem().Path.ShouldBe("vents[0].kind");

    [Fact]
    public void Check_FaultsOfReading_AreNotSaidTwice()
    {
        var reading = PlanJson.Read(StraightStrip.Json.Replace("\"viscosityPaS\": 0.2", "\"viscosityPaS\": \"0.2\""));

        PlanChecker.Check(reading.Message, reading.Faults).Faults.ShouldHaveSingleItem().Text.ShouldContain("without quotes");
    }
}

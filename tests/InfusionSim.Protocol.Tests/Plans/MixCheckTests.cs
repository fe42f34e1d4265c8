using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class MixCheckTests
{
    private static PlanCheck Of(MixRatio ratio) => PlanChecker.Check(StraightStrip.With(plan => plan.Resin.MixRatio = ratio));

    [Fact]
    public void Check_RatioByWeight_NeedsNothingElse() => Of(new MixRatio { PartsByMass = 30 }).Faults.ShouldBeEmpty();

    [Fact]
    public void Check_RatioByVolumeWithoutDensities_AsksForBothByTheirPath() =>
        Of(new MixRatio { PartsByVolume = 40 }).Faults.ShouldBe(
        [
            new Fault("resin.mixRatio.resinDensityKgPerM3", "resin.mixRatio is by volume, and a volume has no weight without a density: give resinDensityKgPerM3, that of the resin before mixing, or give partsByMass instead."),
            new Fault("resin.mixRatio.hardenerDensityKgPerM3", "resin.mixRatio is by volume, and a volume has no weight without a density: give hardenerDensityKgPerM3, that of the hardener, or give partsByMass instead."),
        ]);

    [Fact]
    public void Check_RatioBothWays_AsksForOne() =>
        Of(new MixRatio { PartsByMass = 30, PartsByVolume = 36, ResinDensityKgPerM3 = 1150, HardenerDensityKgPerM3 = 950 }).Faults.ShouldHaveSingleItem().Path.ShouldBe("resin.mixRatio.partsByVolume");

    [Fact]
    public void Check_RatioWithoutParts_IsRefused() => Of(new MixRatio()).Faults.ShouldHaveSingleItem().Path.ShouldBe("resin.mixRatio");

    [Fact]
    public void Check_RatioAsAShare_SaysWhatIsMeant() =>
        Of(new MixRatio { PartsByMass = 0.02 }).Faults.ShouldHaveSingleItem().Text.ShouldBe(
            "resin.mixRatio.partsByMass is 0.02; it must lie between 0.05 and 1000. It is parts of hardener to 100 of resin: 1 : 0.02 is 2.");

    // 100 l of 1150 kg/m³ and 40 l of 950 kg/m³ come to 1093 kg/m³.
    [Theory]
    [InlineData(1100, 0)]
    [InlineData(1300, 1)]
    public void Check_DensityThatTheComponentsDoNotMake_IsAskedAbout(double mixed, int warnings)
    {
        PlanCheck check = PlanChecker.Check(StraightStrip.With(plan =>
        {
            plan.Resin.DensityKgPerM3 = mixed;
            plan.Resin.MixRatio = new MixRatio { PartsByVolume = 40, ResinDensityKgPerM3 = 1150, HardenerDensityKgPerM3 = 950 };
        }));

        check.Faults.ShouldBeEmpty();
        check.Warnings.Count.ShouldBe(warnings);
    }

    [Fact]
    public void Check_MixInAPlan_ShowsItsDefaults()
    {
        Mix mix = PlanChecker.Check(StraightStrip.With(plan => plan.Mix = new Mix { LargestBatchG = 500 })).Plan.Mix;

        mix.ShouldBe(new Mix { ReserveFraction = 0.15, PotRestG = 100, LargestBatchG = 500, VentsOpenAfterMin = 0, WarmestPotDegC = 40 });
    }
}

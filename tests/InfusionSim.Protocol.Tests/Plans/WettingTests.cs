using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class WettingTests
{
    [Fact]
    public void Inputs_SurfaceTensionAlone_WetsFully()
    {
        FillInputs inputs = PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.With(static plan => plan.Resin.SurfaceTensionMnPerM = 35)));
        inputs.Resin.Wetting!.SurfaceTension.ShouldBe(0.035);
        inputs.Resin.Wetting.ContactAngle.ShouldBe(0);
        inputs.Plan.Resin.ContactAngleDeg.ShouldBe(0);
        inputs.Plan.Resin.HasContactAngleDeg.ShouldBeTrue("defaults are shown");
    }

    [Fact]
    public void Inputs_ContactAngle_IsRadians() => PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.With(static plan =>
        (plan.Resin.SurfaceTensionMnPerM, plan.Resin.ContactAngleDeg) = (35, 30)))).Resin.Wetting!.ContactAngle.ShouldBe(Math.PI / 6, 1e-15);

    [Fact]
    public void Inputs_NeitherGiven_KnowNoWetting() => StripInputs().Resin.Wetting.ShouldBeNull();

    [Fact]
    public void Check_AngleWithoutTension_SaysWhatIsMissing() => Fault(static resin => resin.ContactAngleDeg = 30).ShouldContain("resin.surfaceTensionMnPerM is missing");

    [Fact]
    public void Check_TensionInNewtons_OffersTheUnit() => Fault(static resin => resin.SurfaceTensionMnPerM = 0.035).ShouldContain("0.035 N/m is 35");

    [Fact]
    public void Check_AngleOfAResinThatDoesNotWet_IsRefused() =>
        Fault(static resin => (resin.SurfaceTensionMnPerM, resin.ContactAngleDeg) = (35, 90)).ShouldContain("must lie between 0 and 85 °");

    private static FillInputs StripInputs() => PlanMapping.ToInputs(PlanChecker.Check(StraightStrip.Plan()));

    private static string Fault(Action<Resin> change) => PlanChecker.Check(StraightStrip.With(plan => change(plan.Resin))).Faults.ShouldHaveSingleItem().Text;
}

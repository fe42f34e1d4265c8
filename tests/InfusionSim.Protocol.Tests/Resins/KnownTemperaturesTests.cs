using InfusionSim.Planning.Resins;
using InfusionSim.Protocol.Resins;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Resins;

public sealed class KnownTemperaturesTests
{
    private const double Zero = 273.15;

    private static InfusionPlan Plan(Action<Resin> change, double shopDegC = 22) => StraightStrip.With(plan =>
    {
        plan.Shop = new Shop { TemperatureDegC = shopDegC };
        change(plan.Resin);
    });

    private static void Table(Resin card)
    {
        card.ClearViscosityPaS();
        card.ViscosityTemperatures.Add(new ViscosityPoint { DegC = 15, ViscosityPaS = 0.4 });
        card.ViscosityTemperatures.Add(new ViscosityPoint { DegC = 35, ViscosityPaS = 0.14 });
    }

    [Fact]
    public void Range_OneViscosityOnly_IsNone() => KnownTemperatures.Of(Plan(_ => { })).ShouldBeNull();

    [Fact]
    public void Range_PlanWithoutATemperature_IsNone() => KnownTemperatures.Of(StraightStrip.With(plan => Table(plan.Resin))).ShouldBeNull();

    [Fact]
    public void Range_TableAndGelByTheRuleOfThumb_IsNarrowedToWhereTheRuleHolds() =>
        KnownTemperatures.Of(Plan(Table)).ShouldBe(new TemperatureRange(17 + Zero, 27 + Zero));

    [Fact]
    public void Range_TableAndGelWithItsActivation_IsWhereBothHold() => KnownTemperatures.Of(Plan(card =>
    {
        Table(card);
        (card.GelTimeAtDegC, card.GelTimeActivationKjPerMol) = (23, 55);
    })).ShouldBe(new TemperatureRange(15 + Zero, 33 + Zero));

    [Fact]
    public void Range_NumbersMeasuredTooFarApart_IsNone() => KnownTemperatures.Of(Plan(card =>
    {
        Table(card);
        card.GelTimeAtDegC = 60;
    })).ShouldBeNull();

    [Fact]
    public void Range_CurveOverTime_IsNoneForItKnowsOneTemperature() => KnownTemperatures.Of(Plan(card =>
    {
        Table(card);
        card.ViscosityCurve = new ViscosityCurve { AtDegC = 22 };
    })).ShouldBeNull();
}

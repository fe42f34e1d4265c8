using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Resins;

public class GelRuleTests
{
    [Fact]
    public void ThermalGel_AtItsReference_IsTheMeasuredTime()
    {
        ThermalGel gel = new(3600, new ArrheniusLaw(298.15, 60e3));
        gel.TimeFromMixing(SampleResins.At(25), 300).ShouldBe(3600);
        gel.TimeFromMixing(null, 300).ShouldBe(3600);
    }

    [Fact]
    public void ThermalGel_TenDegreesWarmerByTheRule_IsHalf() =>
        new ThermalGel(3600, new HalvingLaw(298.15)).TimeFromMixing(SampleResins.At(35), 0).ShouldBe(1800, 1e-9);

    [Fact]
    public void ThermalGel_Activation_FollowsArrhenius() =>
        new ThermalGel(3600, new ArrheniusLaw(298.15, 60e3)).TimeFromMixing(SampleResins.At(15), 0)
            .ShouldBe(3600 * Math.Exp(60e3 / 8.314462618 * (1 / 288.15 - 1 / 298.15)), 1e-9);

    // Half of the life at 25 °C in the pot before opening, and then ten degrees warmer: the other half takes half as long.
    [Fact]
    public void ThermalGel_WarmedOnTheWay_SumsUpTheShares()
    {
        TemperatureCourse warmed = new([0, 1e-6], [298.15, 308.15]);
        new ThermalGel(3600, new HalvingLaw(298.15)).TimeFromMixing(warmed, 1800).ShouldBe(1800 + 900, 1e-4);
    }

    // Ramp of 10 K in 1000 s by the rule: ∫ 2^(t/1000) dt/3600 = 1 where 2^(t/1000) = 1 + 3.6 ln 2; that lies beyond the ramp, so its share is taken off.
    [Fact]
    public void ThermalGel_Ramp_FollowsItsClosedForm()
    {
        TemperatureCourse ramp = new([0, 1000], [298.15, 308.15]);
        double spent = 1000 / Math.Log(2) / 3600;
        new ThermalGel(3600, new HalvingLaw(298.15)).TimeFromMixing(ramp, 0).ShouldBe(1000 + (1 - spent) * 1800, 1e-6);
        new ThermalGel(1000, new HalvingLaw(298.15)).TimeFromMixing(ramp, 0).ShouldBe(1000 * Math.Log2(1 + Math.Log(2)), 1e-6);
    }

    [Fact]
    public void GelAtConversion_InventedEpoxy_IsTheTable() =>
        new GelAtConversion(SampleResins.InventedEpoxy).TimeFromMixing(SampleResins.At(25), 600).ShouldBe(9805.8, 0.1);

    [Fact]
    public void EarliestGel_TwoRules_TakesTheCautiousOne()
    {
        new EarliestGel([new StatedGel(100), new StatedGel(50)]).TimeFromMixing(null, 0).ShouldBe(50);
        new EarliestGel([]).TimeFromMixing(null, 0).ShouldBe(double.PositiveInfinity);
    }
}

using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Resins;

/// <summary>The pot of an invented epoxy, against a table computed independently with the classical Runge–Kutta method in steps of 0.5 s.</summary>
public class PotExothermTests
{
    private const double Shop = 25 + GasConstant.ZeroCelsius;

    // A step of 0.5 s and values read off at steps: the times are good to a second, the temperatures to a tenth.
    [Theory]
    [InlineData(1, 0.6, 251.89, 2031.5, 2010.0)]
    [InlineData(0.1, 0.12, 240.90, 2266, 2244)]
    [InlineData(10, 2.8, 257.18, 1926, 1902)]
    [InlineData(10, 25, 209.05, 2957.5, 2920)]
    public void Peak_InventedEpoxyInAPot_IsTheTable(double mass, double cooling, double peak, double time, double gel)
    {
        PotExotherm pot = new(SampleResins.InventedEpoxy, mass, cooling, Shop, Shop);
        (pot.PeakTemperature - GasConstant.ZeroCelsius).ShouldBe(peak, 0.1);
        pot.PeakTime.ShouldBe(time, 1);
        pot.GelTime.ShouldBe(gel, 1);
        pot.RunsAway.ShouldBeTrue();
    }

    [Fact]
    public void Temperature_NoHeatLeaves_RisesWithTheCure()
    {
        PotExotherm pot = new(SampleResins.InventedEpoxy, 1, 0, Shop, Shop);
        (pot.PeakTemperature - GasConstant.ZeroCelsius).ShouldBe(261.84, 0.005);
        pot.GelTime.ShouldBe(1815.5, 1);
        foreach (double time in new[] { 500, 1500, 1800, 1815, 1830, 2000.0 })
            (pot.TemperatureAt(time) - Shop).ShouldBe(450.0 / 1.9 * pot.ConversionAt(time), 1e-6);
    }

    [Fact]
    public void Peak_PotHeldAtTheShopsTemperature_GelsAsThinClothDoes()
    {
        PotExotherm pot = new(SampleResins.InventedEpoxy, 1, 1e4, Shop, Shop);
        pot.RunsAway.ShouldBeFalse();
        pot.GelTime.ShouldBe(9805.8, 10);
        (pot.PeakTemperature - Shop).ShouldBeLessThan(0.01);
    }

    [Fact]
    public void Constructor_NoHeat_IsRefused() =>
        Should.Throw<ArgumentException>(() => new PotExotherm(SampleResins.PublishedPolyester, 1, 1, Shop, Shop));
}

using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Resins;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ReferenceLiquids;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Liquids of known viscosity, through the same code as a resin: card, temperature, clock.</summary>
public sealed class ReferenceLiquidTests
{
    private static readonly ThermalViscosity Water = new(WaterLaw.AtReference, new WaterLaw());

    // Source: the formula itself, worked out apart. Tolerance 1e-5: six printed figures.
    [Theory]
    [InlineData(0, 1.791782)]
    [InlineData(10, 1.305902)]
    [InlineData(20, 1.001567)]
    [InlineData(25, 0.889997)]
    [InlineData(30, 0.797206)]
    [InlineData(40, 0.652733)]
    [InlineData(60, 0.466039)]
    [InlineData(80, 0.354046)]
    public void Water_ByItsFormula_IsTheTable(double celsius, double millipascalSeconds) =>
        Math.Abs(ViscosityOf(Water, celsius + 273.15) / (1e-3 * millipascalSeconds) - 1).ShouldBeLessThan(1e-5);

    // Source: saturated water, Perry's Chemical Engineers' Handbook, 9th ed. 2019, table 2-135. Tolerance 0.1 %: as far as the two sources agree.
    [Theory]
    [InlineData(280, 1.4337)]
    [InlineData(300, 0.85384)]
    [InlineData(320, 0.57702)]
    [InlineData(350, 0.36877)]
    public void Water_AgainstTheHandbook_AgreesToAThousandth(double kelvin, double millipascalSeconds) =>
        new AccuracyRecord(
            $"water at {kelvin} K, viscosity", "Perry's Handbook, 9th ed., table 2-135", millipascalSeconds, 1e3 * ViscosityOf(Water, kelvin),
            "mPa·s", "no grid").ShouldHold(1e-3);

    [Theory]
    [InlineData(1, 0, 12100)]
    [InlineData(1, 10, 3816.87)]
    [InlineData(1, 20, 1413.83)]
    [InlineData(1, 25, 905.680)]
    [InlineData(1, 30, 597.922)]
    [InlineData(1, 40, 282.444)]
    [InlineData(0.8, 20, 60.8591)]
    [InlineData(0.8, 25, 45.3504)]
    [InlineData(0.6, 20, 10.9115)]
    public void Glycerol_ByItsFormula_IsTheTable(double share, double celsius, double millipascalSeconds) =>
        Math.Abs(ViscosityOf(Glycerol(share), celsius + 273.15) / (1e-3 * millipascalSeconds) - 1).ShouldBeLessThan(1e-5);

    // Source: table of a university course. Tolerance 3 %: as far as the formula claims to agree.
    [Theory]
    [InlineData(1, 0, 12070)]
    [InlineData(1, 10, 3900)]
    [InlineData(1, 20, 1410)]
    [InlineData(1, 30, 612)]
    [InlineData(1, 40, 284)]
    [InlineData(0.8, 20, 60.1)]
    public void Glycerol_AgainstTheTable_AgreesToThreeHundredths(double share, double celsius, double millipascalSeconds) =>
        new AccuracyRecord(
            $"glycerol {100 * share:0} % at {celsius} °C, viscosity", "table of a university course", millipascalSeconds,
            1e3 * ViscosityOf(Glycerol(share), celsius + 273.15), "mPa·s", "no grid").ShouldHold(0.03);

    // Water is no Arrhenius liquid: a line through three temperatures ten degrees apart misses by a quarter of a per cent, and the residual says so.
    [Fact]
    public void Fit_ThroughThreeTemperaturesOfWater_ShowsWhatALineLeaves()
    {
        double[] temperatures = [293.15, 303.15, 313.15];
        ViscosityFit fit = ViscosityFit.Of(temperatures, [.. temperatures.Select(Water.At)]);
        fit.Residual.ShouldBeInRange(0.001, 0.006);
        foreach (double kelvin in new[] { 298.15, 308.15 }) Math.Abs(fit.Model.At(kelvin) / Water.At(kelvin) - 1).ShouldBeLessThan(fit.Residual);
    }

    private static ThermalViscosity Glycerol(double share) => new(new GlycerolLaw(share).AtReference, new GlycerolLaw(share));

    private static double ViscosityOf(ThermalViscosity liquid, double kelvin)
    {
        Resin resin = new(liquid, new StatedGel(1e6), 0, 1000) { Temperature = new(kelvin) };
        return new DriveClock(resin, Reference.Bag).ViscosityAt(0);
    }
}

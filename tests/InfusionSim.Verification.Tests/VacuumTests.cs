using InfusionSim.Physics.Vacuum;
using InfusionSim.Verification.Tests.Accuracy;

namespace InfusionSim.Verification.Tests;

/// <summary>Air, pump, leak and vapour against numbers that were computed apart from this project.</summary>
public sealed class VacuumTests
{
    private const double FourCubicMetresPerHour = 4.0 / 3600, TwentyLitres = 0.02, Kelvin = 273.15;

    private static readonly GasLeak Measured = new DropTest(800, 600, TwentyLitres).Leak;

    // Source: ISO 2533:1975 (from memory). Tolerance 1e-5: the six figures given.
    [Theory]
    [InlineData(0, 101_325)]
    [InlineData(250, 98_357.5)]
    [InlineData(500, 95_460.8)]
    [InlineData(1000, 89_874.6)]
    [InlineData(1500, 84_556.0)]
    [InlineData(2000, 79_495.2)]
    [InlineData(2500, 74_682.5)]
    [InlineData(3000, 70_108.5)]
    public void Air_AtAHeight_HasTheStandardPressure(double altitude, double expected) =>
        new AccuracyRecord(
            $"air at {altitude} m", "ISO 2533 (from memory)", expected, StandardAtmosphere.PressureAt(altitude), "Pa", "no grid",
            InTable: altitude == 2000).ShouldHold(1e-5);

    // Source: t = (V/S) ln((p₀ − p_u)/(p − p_u)), textbook vacuum practice (from memory). Case: 20 L, 4 m³/h, 1013.25 to 10 mbar.
    [Theory]
    [InlineData(0, 83.130)]
    [InlineData(200, 87.111)]
    public void Pump_DrawingABagDown_TakesTheTimeOfTheFormula(double lowest, double expected)
    {
        double time = new VacuumPump(FourCubicMetresPerHour, lowest).TimeToDraw(TwentyLitres, 101_325, 1000);
        new AccuracyRecord(
            $"pump-down to 10 mbar, pump down to {lowest / 100} mbar", "constant speed, derived", expected, time, "s", "no grid",
            InTable: lowest > 0).ShouldHold(1e-5);
    }

    [Fact]
    public void Leak_FromADropTest_IsVolumeTimesRiseOverTime()
    {
        // Source: Q = V Δp/Δt. Case: 20 L, 8 mbar in 10 min. Expected 0.266667 mbar·L/s; held at 4 m³/h: 0.24 mbar. Tolerance 1e-5: the figures given.
        new AccuracyRecord("leak of 20 L, 8 mbar in 10 min", "ideal gas, derived", 0.266667, Measured.Throughput / 0.1, "mbar·L/s", "no grid").ShouldHold(1e-5);
        new AccuracyRecord(
            "pressure held against it at 4 m³/h", "ideal gas, derived", 0.24, new VacuumPump(FourCubicMetresPerHour, 0).HeldAgainst(Measured) / 100,
            "mbar", "no grid").ShouldHold(1e-5);
        DropTest.RiseOf(Measured, 600, TwentyLitres).ShouldBe(800, 1e-9);
    }

    [Fact]
    public void Leak_OfOneMbarLitrePerSecond_IsSoManyStandardCubicCentimetresAndMoles()
    {
        // Source: 1 sccm = 0.0168875 mbar·L/s; R = 8.314462618 J/(mol·K). Tolerance 1e-5: the figures given.
        var leak = new GasLeak(0.1);
        new AccuracyRecord(
            "1 mbar·L/s", "definition of the standard cubic centimetre", 59.2154, leak.StandardCubicCentimetresPerMinute, "sccm", "no grid",
            InTable: false).ShouldHold(1e-5);
        new AccuracyRecord(
            "1 mbar·L/s at 20 °C", "ideal gas", 4.10276e-5, leak.MolesPerSecond(Kelvin + 20), "mol/s", "no grid", InTable: false).ShouldHold(1e-5);
    }

    [Fact]
    public void Leak_OfThePublishedExample_IsItsMolesPerSecond()
    {
        // Source: 40 CFR 1065.644, worked example: 0.002 m³, 25.3 to 50.6 kPa, 293.15 K, 70 s. Tolerance 1e-5: its gas constant is 8.314472.
        double moles = GasLeak.MolesPerSecond(0.002, 25_300, 293.15, 50_600, 293.15, 70);
        new AccuracyRecord("vacuum leak of a closed volume", "40 CFR 1065.644, worked example", 2.965705e-4, moles, "mol/s", "no grid").ShouldHold(1e-5);
    }

    // Source: hydrostatics. Tolerance 1e-5: the figures given.
    [Theory]
    [InlineData(1100, 1, 10_787.3)]
    [InlineData(1150, 1, 11_277.6)]
    [InlineData(1100, 0.5, 5393.66)]
    public void Head_OfAColumnOfResin_IsItsWeight(double density, double height, double expected) =>
        new AccuracyRecord(
            $"head of {height} m at {density} kg/m³", "hydrostatics", expected, SuctionHead.Drop(density, height), "Pa", "no grid",
            InTable: false).ShouldHold(1e-5);

    [Fact]
    public void Head_OfTheWholeAtmosphere_IsTheHighestLift() =>

        // Source: p/(ρg) at 101,325 Pa and 1100 kg/m³. Tolerance 1e-4: four figures given.
        new AccuracyRecord(
            "highest lift at 1100 kg/m³", "hydrostatics", 9.393, SuctionHead.HighestLift(1100, 101_325), "m", "no grid", InTable: false).ShouldHold(1e-4);

    // Source: Antoine's equation with constants that public tables quote after NIST (from memory). Tolerance 1e-5: the six figures given.
    [Theory]
    [InlineData(VolatileKind.Water, 15, 1685.94)]
    [InlineData(VolatileKind.Water, 20, 2331.36)]
    [InlineData(VolatileKind.Water, 25, 3179.38)]
    [InlineData(VolatileKind.Water, 30, 4279.78)]
    [InlineData(VolatileKind.Water, 40, 7481.42)]
    [InlineData(VolatileKind.Styrene, 15, 470.943)]
    [InlineData(VolatileKind.Styrene, 20, 645.153)]
    [InlineData(VolatileKind.Styrene, 25, 872.224)]
    [InlineData(VolatileKind.Styrene, 30, 1164.708)]
    [InlineData(VolatileKind.Styrene, 40, 2006.958)]
    public void Vapour_OverAPureLiquid_HasThePressureOfAntoine(VolatileKind kind, double celsius, double expected)
    {
        double pressure = new VolatileComponent(kind, 1).PressureAt(Kelvin + celsius);
        new AccuracyRecord(
            $"vapour of {kind.ToString().ToLowerInvariant()} at {celsius} °C", "Antoine's equation, constants after NIST (from memory)", expected,
            pressure, "Pa", "no grid", InTable: celsius == 25).ShouldHold(1e-5);
    }

    // Source: the same turned round. Tolerance: half a unit of the last figure given.
    [Theory]
    [InlineData(VolatileKind.Water, 2000, 17.607)]
    [InlineData(VolatileKind.Water, 1000, 7.388)]
    [InlineData(VolatileKind.Styrene, 2000, 39.934)]
    [InlineData(VolatileKind.Styrene, 1000, 27.338)]
    [InlineData(VolatileKind.Styrene, 500, 15.935)]
    public void Liquid_UnderAVacuum_BoilsAtTheTemperatureOfAntoine(VolatileKind kind, double pressure, double celsius) =>
        (new VolatileComponent(kind, 1).Pure.BoilingPointAt(pressure) - Kelvin).ShouldBe(celsius, 5.1e-4);

    [Fact]
    public void AirViscosity_AtSeaLevel_IsThatOfTheStandardAtmosphere() =>

        // Source: 1.7894e-5 Pa·s at 288.15 K, U.S. Standard Atmosphere 1976 (from memory). Tolerance 5e-5: five figures given.
        new AccuracyRecord(
            "viscosity of air at 15 °C", "standard atmosphere (from memory)", 1.7894e-5, AirViscosity.At(288.15), "Pa·s", "no grid",
            InTable: false).ShouldHold(5e-5);
}

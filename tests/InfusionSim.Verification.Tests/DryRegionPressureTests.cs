using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Vacuum;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>What a leak does to the pressure in dry cloth.</summary>
public sealed class DryRegionPressureTests
{
    private const double Length = 0.6, Width = 0.4, CellSize = 0.005, Room = 293.15;

    private static readonly GasLeak Leak = new(0.0266667);

    [Theory]
    [InlineData(VentKind.Membrane)]
    [InlineData(VentKind.Tube)]
    public void Strip_WithALeakAllOver_ResistsAsTheClosedForm(VentKind kind)
    {
        // Source: K h W ψ'' = −1/L with ψ = 0 at the vent and ψ' = 0 at the far end: mean L/(3KhW) (derived). Case: strip of the reference cloth with a
        // vent across its end. Tolerance 1e-4: second order in the square, 120 of them along the strip.
        FillProblem problem = Chain.Problem(Strip(kind));
        double expected = Length / (3 * Reference.Permeability * Reference.Thickness * Width);

        new AccuracyRecord(
            $"gas through a dry strip, {kind.ToString().ToLowerInvariant()}", "Darcy's law of a gas, derived", expected,
            DryRegionPressure.OfDryPanel(problem)!.Resistance, "1/m³", Chain.GridOf(problem), kind == VentKind.Tube).ShouldHold(1e-4);
    }

    [Fact]
    public void Strip_WithALeakAllOver_HoldsThePressureOfAnIntegration()
    {
        // Source: own integration of p dp = μ q(x)/(KhW) dx from the vent, fourth order in 4000 steps, and the root of the mean of p². Independent of
        // the solver.
        const double Vent = 1325;
        double flow = AirViscosity.At(Room) * Leak.Throughput / (Reference.Permeability * Reference.Thickness * Width), squares = 0, pressure = Vent;
        const int Steps = 4000;
        const double Step = Length / Steps;
        for (int k = 0; k < Steps; k++)
        {
            double from = k * Step, before = pressure;
            double a = Slope(from, pressure), b = Slope(
                from + Step / 2, pressure + Step / 2 * a), c = Slope(from + Step / 2, pressure + Step / 2 * b), d = Slope(from + Step, pressure + Step * c);
            pressure += Step / 6 * (a + 2 * b + 2 * c + d);
            squares += (before * before + pressure * pressure) / 2 * Step;
        }

        double observed = DryRegionPressure.OfDryPanel(Chain.Problem(Strip(VentKind.Tube)))!.PressureWith(Vent, Leak, Room);
        new AccuracyRecord(
            "pressure in a dry strip that leaks 0.27 mbar·L/s", "integration along the strip", Math.Sqrt(squares / Length), observed, "Pa",
            "120 × 80 cells of 5 mm").ShouldHold(1e-4);

        double Slope(double from, double at) => flow * (1 - from / Length) / at;
    }

    private static Panel Strip(VentKind kind)
    {
        Panel panel = Chain.ReferencePanel(
            Shapes.Rectangle(Length, Width), CellSize, new LinePath([new(0, 0), new(0, Width)]), new LinePath([new(Length, 0), new(Length, Width)]));
        return panel with { Vents = [panel.Vents[0] with { Kind = kind }] };
    }
}

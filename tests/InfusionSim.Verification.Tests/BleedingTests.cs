using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>What an open vent passes after the panel is full, and how long the resin that filled last takes to it.</summary>
public sealed class BleedingTests
{
    private const string Steady = "steady flow through a full panel (Darcy)";
    private const string Journey = "pore volume over flow, derived";
    private const double Length = 0.5;

    [Fact]
    public void Bleed_ThroughAFullStrip_IsDarcysFlow()
    {
        // Source: Q = KhWΔp/(μL) (Darcy). Case: K 1e-10 m², 3 mm, 500 × 500 mm, 0.2 Pa·s, 1e5 Pa. Expected: 1.5e-7 m³/s, 9 cm³ each minute.
        Forecast forecast = Chain.Predict(OpenStrip(0.5, 10e-3));
        VentBleed bleed = forecast.AfterFront!.Vents[0]!;
        string grid = Chain.GridOf(forecast.Map.Problem);

        // Tolerance 1e-6: nothing but the linear solver stands between the two.
        new AccuracyRecord("strip 500 × 500 mm, flow out of the open vent", Steady, 1.5e-7, bleed.Rate, "m³/s", grid).ShouldHold(1e-6);
        forecast.Vents[0].ResinOutRate.ShouldBe(bleed.Rate, 1e-16);

        // With constant viscosity as much each second: ten minutes are 90 cm³.
        BleedPoint last = bleed.Points[^1];
        new AccuracyRecord(
            "strip 500 × 500 mm, resin out in ten minutes", Steady, 9e-5, last.Volume / (last.Time - forecast.EndTime) * 600, "m³", grid,
            InTable: false).ShouldHold(1e-6);
    }

    [Fact]
    public void LastResin_OfAStrip_LeavesAfterTheTimeItsPoresTake()
    {
        // Source: a tenth of the pores before the vent, nine tenths of that: the resin at 0.91 L has φμ·0.09L·L/(KΔp) to go (pore volume over flow).
        // Case: the strip above, full at 1250 s. Expected: 0.09 · 2500 s = 225 s later, at 1475 s.
        Forecast forecast = Chain.Predict(OpenStrip(0.02, 5e-3));

        // Tolerance 0.5 %: a square is 1 % of the length; the share is met at the middle of one, half a square at most off in 0.91 L.
        new AccuracyRecord(
            "strip, the resin that filled last has left", Journey, 1475, forecast.AfterFront!.LastResinOut!.Value, "s",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(5e-3);
    }

    [Theory]
    [InlineData(10e-3)]
    [InlineData(5e-3)]
    [InlineData(2.5e-3)]
    public void Journey_ToTheMiddleOfADisc_IsPoreVolumeOverFlow(double size)
    {
        // Source: all that lies inside a circle has to leave before what stands on it: t = φhπ(r² − r₀²)/Q with Q = 2πhKΔp/(μ ln(R/r₀)), so φμ(r² −
        // r₀²) ln(R/r₀)/(2KΔp).
        // Case: disc of 0.25 m fed round its rim, vent a fitting Ø 40 mm in its middle, read at 0.15 m (mean of the squares within half a square of it).
        const double Rim = 0.25, Vent = 0.02, At = 0.15;
        Ring disc = Shapes.Ellipse(new Point2(0, 0), Rim, Rim);
        Panel panel = Chain.ReferencePanel(disc, size, disc.AsPath(), new LinePath([new(0, 0)])) with
        {
            Vents = [new Vent("V1", new LinePath([new(0, 0)]), 2 * Vent, VentKind.Tube)],
        };
        Forecast forecast = Chain.Predict(panel);
        double[] clocks = TravelToVents.Of(forecast.Map.Problem, forecast.Map.Total.SteadyPressure).FromMiddle;
        var cells = forecast.Map.Problem.Cells;
        double[] onRing = [.. Enumerable.Range(0, clocks.Length).Where(cell => Math.Abs(cells.CentroidOf(cell).DistanceTo(new(0, 0)) - At) < size / 2)
            .Select(cell => clocks[cell] * (At * At - Vent * Vent) / (Math.Pow(cells.CentroidOf(cell).DistanceTo(new(0, 0)), 2) - Vent * Vent))];
        double expected = Reference.Porosity * (At * At - Vent * Vent) * Math.Log(Rim / Vent) / (2 * Reference.Permeability * Reference.ClockRate);

        // Tolerance 0.6 %: a fitting on squares is a cluster of whole cells, whose area is some per cent off the circle's, (r₀/r)² = 1.8 % of what lies inside.
        new AccuracyRecord(
            "disc fed round its rim, from 150 mm to the vent", Journey, expected, onRing.Average() / Reference.ClockRate, "s",
            Chain.GridOf(forecast.Map.Problem)).ShouldHold(6e-3);
    }

    private static Panel OpenStrip(double width, double size) => Chain.ReferencePanel(
        Shapes.Rectangle(Length, width), size, new LinePath([new(0, 0), new(0, width)]), new LinePath([new(Length, 0), new(Length, width)])) with
    {
        Vents = [new Vent("V1", new LinePath([new(Length, 0), new(Length, width)]), 0.012, VentKind.Tube)],
    };
}

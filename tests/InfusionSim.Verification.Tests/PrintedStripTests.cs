using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Strip 600 × 400 mm fed along its left edge with a tube vent along its right edge: every number of its forecast.</summary>
public sealed class PrintedStripTests
{
    private const string Source = "straight front, derived";
    private const double Tolerance = 1e-6;

    private static Forecast Predict()
    {
        var panel = new Panel(
            new Region(Shapes.Rectangle(0.6, 0.4), []),
            [Reference.Isotropic("skin", 1e-10, 0.5, 3e-3)],
            [new Feed("F1", new LinePath([new(0, 0), new(0, 0.4)]), 0.012)],
            [new Vent("V1", new LinePath([new(0.6, 0), new(0.6, 0.4)]), 0.012, VentKind.Tube)],
            [new TimingMark("M1", new Point2(0.3, 0.2))],
            5e-3);
        return Forecaster.Predict(panel, new Resin(0.2, 3600, 360, 1100), new Bag(1325, 101325), new Goals(1e-4, 1, 200e-6), 1.5);
    }

    [Fact]
    public void Forecast_OfTheStrip_HasTheClosedFormsOfAStraightFront()
    {
        // Source: t = φμL²/(2KΔp); volumes φhA; flow when full KhWΔp/(μL). Derived from Darcy's law for a straight front.
        // Case: L = 0.6 m, W = 0.4 m, h = 3 mm, φ = 0.5, K = 1e-10 m², μ = 0.2 Pa·s, Δp = 1e5 Pa, gel 54 min after opening.
        Forecast forecast = Predict();

        // Expected: t = 1800 s, 360 cm³, 6 cm³/min; the band is ×/÷ 1.5. Tolerance: exact in one dimension, so the solver's own.
        forecast.Outcome.ShouldBe(Outcome.Fills);
        forecast.Findings.ShouldBeEmpty();
        Hold("strip 600 × 400 mm, fill time", 1800, forecast.FillTime!.Value, "s");
        Hold("strip 600 × 400 mm, gel time", 3240, forecast.GelTime, "s");
        Hold("strip 600 × 400 mm, spare time", 1440, forecast.SpareTime!.Value, "s");
        Hold("strip 600 × 400 mm, gel margin", 1.8, forecast.GelMargin!.Value, "-");
        Hold("strip 600 × 400 mm, end", 1800, forecast.EndTime, "s");
        Hold("strip 600 × 400 mm, band, fast", 1200, forecast.Likely.FillTimeFrom!.Value, "s");
        Hold("strip 600 × 400 mm, band, slow", 2700, forecast.Likely.FillTimeTo!.Value, "s");
        Hold("strip 600 × 400 mm, band, gel margin slow", 1.2, forecast.Likely.GelMarginFrom!.Value, "-");
        Hold("strip 600 × 400 mm, band, gel margin fast", 2.7, forecast.Likely.GelMarginTo!.Value, "-");
        Hold("strip 600 × 400 mm, full share", 1, forecast.FilledFraction, "-");
        Hold("strip 600 × 400 mm, resin in", 360, forecast.ResinIn.Single() * 1e6, "cm³");
        Hold("strip 600 × 400 mm, resin in the cloth", 360, forecast.ResinInPreform * 1e6, "cm³");
        forecast.DrySpots.ShouldBeEmpty();
        forecast.Map.Problem.PoreVolume.Count(volume => volume > 0).ShouldBe(9600);
        forecast.NumericalError.ShouldBeLessThanOrEqualTo(1e-3);
        Math.Abs(forecast.MassBalanceError).ShouldBeLessThanOrEqualTo(Chain.MassTolerance);
    }

    [Fact]
    public void Vent_OfTheStrip_IsWetWhenTheClothIsFull()
    {
        // Source, case and tolerance as above: the front reaches the vent with nothing dry behind it, then KhWΔp/(μL) runs out.
        VentForecast vent = Predict().Vents.Single();

        Hold("strip 600 × 400 mm, vent wet", 1800, vent.ArrivalTime!.Value, "s");
        Hold("strip 600 × 400 mm, full share when the vent is wet", 1, vent.FilledFractionAtArrival!.Value, "-");
        Hold("strip 600 × 400 mm, flow out of the vent", 6, vent.ResinOutRate * 60e6, "cm³/min");
        (vent.ResinOut * 1e6).ShouldBe(0, 360 * Tolerance);
    }

    [Fact]
    public void LastPlace_OfTheStrip_IsTheLowestOfTheRightmostCells()
    {
        // Source: all cells of the right column fill together; the tie goes to the lowest. Expected: the middle of that cell.
        Point2 last = Predict().LastToFill!.Value;

        last.X.ShouldBe(0.5975, 1e-9);
        last.Y.ShouldBe(0.0025, 1e-9);
    }

    [Fact]
    public void TimingMark_AtHalfLength_IsReachedInAQuarterOfTheTime()
    {
        // Source: x² grows with time. Expected: 450 s. Tolerance 1e-3: read between cells of 1/120 of the length.
        double arrival = Predict().TimingMarkArrivals.Single()!.Value;

        new AccuracyRecord("strip 600 × 400 mm, timing mark at half length", Source, 450, arrival, "s", "120 × 80 cells of 5 mm").ShouldHold(1e-3);
    }

    private static void Hold(string what, double expected, double observed, string unit) =>
        new AccuracyRecord(
            what, Source, expected, observed, unit, "120 × 80 cells of 5 mm",
            InTable: what is "strip 600 × 400 mm, fill time" or "strip 600 × 400 mm, flow out of the vent").ShouldHold(Tolerance);
}

using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A strip of 0.5 m filled with a resin that thickens on its way. The front depends on ∫ dt/μ alone, so x² = 2KΔp/φ ∫ dt/μ (derived).</summary>
public sealed class ThickeningResinTests
{
    private const string Source = "straight front with ∫ dt/μ, derived";
    private const double Length = 0.5, Rate = 5e-4, FastRate = 1e-3, Gel = 1e6;

    // μ = μ₀ exp(kt): t = −ln(1 − kμ₀τ)/k with τ = φL²/(2KΔp) = 6250 s/(Pa·s). Expected: 1961.659 s, 0.533333 Pa·s.
    [Fact]
    public void FillTime_ViscosityThatGrowsExponentially_IsTheClosedForm()
    {
        Forecast forecast = Predict(Growing(Rate));

        // Tolerance 1e-6: the clock is good to 1e-10, the strip to 1e-6.
        Hold("strip with μ = 0.2·exp(5e-4·t), fill time", 1961.6585060234528, forecast.FillTime!.Value, "s", forecast, 1e-6);
        forecast.Clock.ViscosityAt(forecast.FillTime.Value).ShouldBe(0.533333333, 1e-6);
    }

    // Never fills where kμ₀τ > 1: it comes to rest at √(2KΔp/(φkμ₀)).
    [Fact]
    public void Reach_ViscosityThatGrowsTooFast_IsTheClosedForm()
    {
        Forecast forecast = Predict(Growing(FastRate));

        forecast.Outcome.ShouldBe(Outcome.GelsFirst);
        forecast.FillTime.ShouldBeNull();

        // Tolerance 0.1 %: the wet share of the cell in which the front stands is read, 1/100 of the length.
        Hold("strip with μ = 0.2·exp(1e-3·t), farthest reach", 0.4472135955, Length * forecast.FilledFraction, "m", forecast, 1e-3);
        Hold("the same strip, front after 900 s", 0.3445080, ReachAt(forecast, 900), "m", forecast, 1e-3);
        Hold("the same strip, front after 1800 s", 0.4085830, ReachAt(forecast, 1800), "m", forecast, 1e-3);
    }

    // μ = μ₀(1 + at): ∫ dt/μ = ln(1 + at)/(aμ₀), so t = (exp(aμ₀τ) − 1)/a = 2490.343 s with a = 1e-3. Read from a curve with a reading each minute.
    [Fact]
    public void FillTime_MeasuredCurveOfALinearRise_IsTheClosedForm()
    {
        double[] times = [.. Enumerable.Range(0, 61).Select(static k => 60.0 * k)];
        Forecast forecast = Predict(new MeasuredViscosity(times, [.. times.Select(static time => 0.2 * (1 + 1e-3 * time))]));

        // Tolerance 1e-5: what the interpolation between readings leaves.
        Hold("strip with μ = 0.2·(1 + 1e-3·t) read each minute, fill time", 2490.342957, forecast.FillTime!.Value, "s", forecast, 1e-5);
    }

    // A step of 100 s in the pot makes all of it older by that: the same as starting 100 s up the curve.
    [Fact]
    public void FillTime_MixedEarlier_IsThatOfAThickerResin()
    {
        Forecast forecast = Predict(Growing(Rate), mixToOpen: 100);
        double start = 0.2 * Math.Exp(Rate * 100);

        Hold("the strip of 5e-4, mixed 100 s before, fill time", -Math.Log(1 - Rate * start * 6250) / Rate, forecast.FillTime!.Value, "s", forecast, 1e-6);
    }

    private static DualArrheniusViscosity Growing(double rate) => new(new(0.2, new HalvingLaw(298.15)), new(rate, new HalvingLaw(298.15)));

    private static Forecast Predict(ViscosityModel viscosity, double mixToOpen = 0)
    {
        const double Width = 0.02, Square = Length / 100;
        Panel strip = Chain.ReferencePanel(
            Shapes.Rectangle(Length, Width), Square, new LinePath([new(0, 0), new(0, Width)]), new LinePath([new(Length, 0), new(Length, Width)]));
        return Chain.Predict(strip, new Resin(viscosity, new StatedGel(Gel), mixToOpen, 1100));
    }

    private static double ReachAt(Forecast forecast, double time) => Length * forecast.Map.StateAt(forecast.Clock.ClockAt(time)).FilledFraction;

    private static void Hold(string problem, double expected, double observed, string unit, Forecast forecast, double tolerance) =>
        new AccuracyRecord(problem, Source, expected, observed, unit, Chain.GridOf(forecast.Map.Problem)).ShouldHold(tolerance);
}

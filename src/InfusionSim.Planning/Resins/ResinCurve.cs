using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;

namespace InfusionSim.Planning.Resins;

/// <summary>How a fill with one resin goes, read off the states that the flow was followed through: no solve of its own.</summary>
public static class ResinCurve
{
    /// <summary>Points of a curve [-]; the end of the fill is one more.</summary>
    public const int Points = 150;

    /// <summary>The curve, from the opening of the first feed to gel or to the latest time asked for.</summary>
    /// <param name="forecast">The forecast of the resin.</param>
    /// <param name="latest">Latest time that is shown [s]; never before the end of the fill.</param>
    public static IReadOnlyList<ResinMoment> Of(Forecast forecast, double latest)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        DriveClock clock = forecast.Clock;
        double end = forecast.EndTime, last = Math.Max(end, Math.Min(latest, clock.GelTime));
        double full = FullClock(forecast, clock);
        return [.. Enumerable.Range(0, Points).Select(k => last * Spread((double)k / (Points - 1))).Append(end).Order().Distinct().Select(MomentAt)];

        ResinMoment MomentAt(double time) => new(time, FilledAt(forecast, clock, Math.Min(time, end)), ViscosityAt(clock, time), clock.ClockAt(time) / full);
    }

    // Close together at first, where the front runs fastest; evenly later.
    private static double Spread(double share) => share * share * (2 - share);

    // Whatever the gel time: the clock at which the last place that can fill is full.
    private static double FullClock(Forecast forecast, DriveClock clock) =>
        forecast.GelMargin is double margin and > 0 ? clock.GelClock / margin : clock.ClockAt(forecast.EndTime);

    private static double? ViscosityAt(DriveClock clock, double time) => clock.ViscosityAt(time) is var viscosity && double.IsFinite(viscosity) ? viscosity : null;

    // Straight lines on the square root of the clock, which a straight front follows exactly.
    private static double FilledAt(Forecast forecast, DriveClock clock, double time)
    {
        if (time >= forecast.EndTime) return forecast.FilledFraction;
        double at = Math.Sqrt(clock.ClockAt(time)), before = 0, filled = 0;
        foreach (FillTally tally in forecast.Map.Tallies)
        {
            double root = Math.Sqrt(tally.Clock);
            if (root >= at) return root > before ? filled + (tally.FilledFraction - filled) * (at - before) / (root - before) : tally.FilledFraction;
            (before, filled) = (root, tally.FilledFraction);
        }

        return forecast.FilledFraction;
    }
}

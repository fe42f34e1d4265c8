using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Bleeding;

/// <summary>When each vent passes resin for the last time, as the plan has its clamps and those of the feeds.</summary>
internal static class VentShutting
{
    /// <summary>
    /// Time from which each vent passes nothing more, in the panel's order [s]: it is shut and stays so, or all feeds are; null for one that goes on.
    /// </summary>
    /// <param name="forecast">A forecast with its arrivals.</param>
    public static IReadOnlyList<double?> Of(Forecast forecast)
    {
        if (forecast.Map.Problem.Panel is not Panel panel) return new double?[forecast.Vents.Count];
        double fed = panel.Feeds.Max(feed => LastShut(feed.Clamp, forecast) ?? double.PositiveInfinity);
        double?[] shut = [.. panel.Vents.Select(vent => LastShut(vent.Clamp, forecast))];
        return [.. shut.Select(time => double.IsPositiveInfinity(fed) ? time : Math.Min(fed, time ?? fed))];
    }

    /// <summary>Time at which a clamp is shut and stays so [s]; null when it is open in the end.</summary>
    /// <param name="clamp">The clamp.</param>
    /// <param name="forecast">A forecast with its arrivals.</param>
    public static double? LastShut(Clamp clamp, Forecast forecast)
    {
        double? shut = clamp.OpenAtStart > 0 ? null : 0;
        IEnumerable<(double? At, double OpenFraction)> turns = clamp.Steps.Select(step => (TimeOf(step.When, forecast), step.OpenFraction));
        foreach ((double? at, double openFraction) in turns.Where(static turn => turn.At is not null).OrderBy(static turn => turn.At))
            shut = openFraction > 0 ? null : shut ?? at;
        return shut;
    }

    private static double? TimeOf(Moment moment, Forecast forecast) => moment switch
    {
        AtTime at => at.Time,
        WhenFull => forecast.EndTime,
        WhenReached reached => ArrivalOf(reached.Name, forecast),
        _ => null,
    };

    private static double? ArrivalOf(string name, Forecast forecast)
    {
        Panel panel = forecast.Map.Problem.Panel!;
        for (int mark = 0; mark < panel.TimingMarks.Count; mark++)
            if (panel.TimingMarks[mark].Name == name) return forecast.TimingMarkArrivals[mark];
        for (int vent = 0; vent < panel.Vents.Count; vent++)
            if (panel.Vents[vent].Name == name) return forecast.Vents[vent].ArrivalTime;
        return null;
    }
}

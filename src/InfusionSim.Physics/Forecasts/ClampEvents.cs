using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>What comes to pass of what is to be done with clamps and vacuum.</summary>
internal static class ClampEvents
{
    /// <summary>The turns and changes that are made before the resin gels, or a pot is empty, in order of time.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="bag">The bag.</param>
    /// <param name="clockOf">Drive clock of a moment, +∞ when it never comes.</param>
    /// <param name="forecast">The forecast they belong to.</param>
    public static IReadOnlyList<ClampEvent> Of(Panel panel, Bag bag, Func<Moment, double> clockOf, Forecast forecast)
    {
        IEnumerable<(string? Line, double Value, Moment When)> rules =
        [
            .. panel.Feeds.SelectMany(static feed => feed.Clamp.Steps.Select(step => ((string?)feed.Name, step.OpenFraction, step.When))),
            .. panel.Vents.SelectMany(static vent => vent.Clamp.Steps.Select(step => ((string?)vent.Name, step.OpenFraction, step.When))),
            .. bag.Steps.Select(static step => ((string?)null, step.Pressure, step.When)),
        ];

        return [.. rules.Select(rule => new ClampEvent(rule.Line, TimeOf(rule.When, panel, clockOf, forecast), rule.Value, rule.When))
            .Where(done => done.Time <= (forecast.Outcome == Outcome.PotRunsDry ? forecast.EndTime : forecast.GelTime)).OrderBy(static done => done.Time)];
    }

    // After the end the drive clock may stand still, but the clock on the wall goes on; a place that is reached with the very end is reached.
    private static double TimeOf(Moment when, Panel panel, Func<Moment, double> clockOf, Forecast forecast)
    {
        if (when is AtTime at) return at.Time;
        double time = forecast.Clock.TimeAt(clockOf(when));
        return double.IsFinite(time) || when is not WhenReached reached ? time : ArrivalAt(reached.Name, panel, forecast) ?? double.PositiveInfinity;
    }

    private static double? ArrivalAt(string name, Panel panel, Forecast forecast)
    {
        for (int mark = 0; mark < panel.TimingMarks.Count; mark++)
            if (panel.TimingMarks[mark].Name == name) return forecast.TimingMarkArrivals[mark];
        for (int vent = 0; vent < panel.Vents.Count; vent++)
            if (panel.Vents[vent].Name == name) return forecast.Vents[vent].ArrivalTime;
        return null;
    }
}

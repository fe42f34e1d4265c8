using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Forecasts;

/// <summary>What comes to pass of what is to be done with clamps and vacuum.</summary>
internal static class ClampEvents
{
    /// <summary>The turns and changes that are made before the resin gels, in order of time.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="clock">When.</param>
    public static IReadOnlyList<ClampEvent> Of(FillMap map, DriveClock clock)
    {
        IEnumerable<ClampEvent?> turns = map.Turns.Select(turn => At(
            turn.When, turn.Clock, clock, (turn.IsVent ? map.Problem.Vents[turn.Line] : map.Problem.Feeds[turn.Line]).Name, turn.OpenFraction));
        IEnumerable<ClampEvent?> steps = map.BagTurns.Select(turn => At(turn.When, turn.Clock, clock, null, turn.Pressure));
        return [.. turns.Concat(steps).OfType<ClampEvent>().OrderBy(static done => done.Time)];
    }

    // After the end the drive clock may stand still, but the clock on the wall goes on.
    private static ClampEvent? At(Moment? when, double clockValue, DriveClock clock, string? line, double value)
    {
        double time = when is AtTime at ? at.Time : clock.TimeAt(clockValue);
        return when is not null && time <= clock.GelTime ? new ClampEvent(line, time, value, when) : null;
    }
}

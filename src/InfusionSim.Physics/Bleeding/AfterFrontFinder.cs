using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Bleeding;

/// <summary>Finds out what open vents do after the end of a fill.</summary>
internal sealed class AfterFrontFinder
{
    private const int Stretches = 12;

    private readonly FillMap map;
    private readonly DriveClock clock;
    private readonly double end;

    private AfterFrontFinder(FillMap map, DriveClock clock, double end)
    {
        this.map = map;
        this.clock = clock;
        this.end = end;
    }

    /// <summary>What happens after the front has arrived; null when no vent passes resin then.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="clock">When.</param>
    /// <param name="end">Drive clock at which the last place is full [-]; below that of gel.</param>
    /// <param name="resinOut">Volume that has left through each vent up to the end [m³].</param>
    /// <param name="shut">When each vent is clamped according to the plan, or no feed is left open [s]; null for one that goes on passing resin.</param>
    /// <param name="factor">How uncertain the permeability is, times or divided by [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static AfterFront? Of(
        FillMap map, DriveClock clock, double end, IReadOnlyList<double> resinOut, IReadOnlyList<double?> shut, double factor, CancellationToken cancellation)
    {
        if (!(end < clock.GelClock)) return null;
        AfterFrontFinder finder = new(map, clock, end);
        double endTime = clock.TimeAt(end);
        double[] flows = [.. Enumerable.Range(0, shut.Count).Select(vent => shut[vent] <= endTime ? 0 : finder.FlowOut(vent))];
        if (flows.All(static flow => flow <= 0)) return null;
        LastResin last = map.LastResinAt(end, cancellation);
        double limit = finder.LastOpening(flows, shut), leaving = last.ClockWhenLeft(AfterFront.LeftShare);

        // Where some of it stays whatever one waits for, nine tenths of the rest are waited for.
        double leaves = last.LeftAfter(limit - end);
        double advised = leaves > 0 ? end + last.ClockWhenLeft(AfterFront.LeftShare * leaves) : end;
        if (!(advised <= limit)) advised = limit;
        return new AfterFront
        {
            EndTime = endTime,
            GelTime = clock.GelTime,
            LastResinOut = finder.TimeBefore(limit, end + leaving),
            LastResinOutFrom = finder.TimeBefore(limit, (end + leaving) / factor),
            LastResinOutTo = finder.TimeBefore(limit, (end + leaving) * factor),
            ClampTime = clock.TimeAt(advised),
            LeftWhenClamped = last.LeftAfter(advised - end),
            Stays = 1 - last.LeftAfter(limit - end),
            StaysAt = last.MiddleOfRest(limit - end),
            Vents = [.. flows.Select((flow, vent) => flow > 0 ? finder.AtVent(vent, flow, resinOut[vent], shut[vent], advised) : null)],
        };
    }

    private VentBleed AtVent(int vent, double flow, double before, double? shut, double advised)
    {
        double last = shut is double time ? Math.Min(clock.ClockAt(time), clock.GelClock) : clock.GelClock;
        double from = clock.TimeAt(end), to = clock.TimeAt(last);
        BleedPoint[] points = [.. Enumerable.Range(0, Stretches + 1).Select(k => PointAt(from + (to - from) * k / Stretches))];
        return new(flow * clock.RateAt(clock.TimeAt(end)), before, flow * (Math.Min(advised, last) - end), flow * (last - end), HoseVolume(vent), shut, points);

        BleedPoint PointAt(double time) => new(time, flow * Math.Max(0, Math.Min(clock.ClockAt(time), last) - end));
    }

    // The clock at which the last of the vents that pass resin shuts, or gel.
    private double LastOpening(double[] flows, IReadOnlyList<double?> shut)
    {
        double latest = end;
        for (int vent = 0; vent < flows.Length; vent++)
            if (flows[vent] > 0) latest = Math.Max(latest, shut[vent] is double time ? clock.ClockAt(time) : clock.GelClock);
        return Math.Min(latest, clock.GelClock);
    }

    private double? TimeBefore(double limit, double at) => at <= limit ? clock.TimeAt(at) : null;

    private double FlowOut(int vent)
    {
        if (!map.Problem.VentPassesResin[vent]) return 0;
        return ResinAccount.OutOf(map.ProblemAtEnd, vent, map.Total.SteadyPressure, Lift);

        double Lift(int from, int to) => map.Problem.Heads is double[] heads ? heads[to] - heads[from] : 0;
    }

    private double HoseVolume(int vent) => map.Problem.Network.Nodes
        .Where(node => node.Line == vent && node.Part is LinePart.Vent or LinePart.VentHose).Sum(static node => node.Volume);
}

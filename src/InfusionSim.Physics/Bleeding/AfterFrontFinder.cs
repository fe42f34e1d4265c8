using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Bleeding;

/// <summary>Finds out what open vents do after the end of a fill.</summary>
internal sealed class AfterFrontFinder
{
    private const int Stretches = 12;

    private readonly Forecast forecast;
    private readonly FillMap map;
    private readonly DriveClock clock;
    private readonly double end;
    private readonly IReadOnlyList<double?> shut;
    private readonly double[] flows;

    private AfterFrontFinder(Forecast forecast, IReadOnlyList<double?> shut)
    {
        this.forecast = forecast;
        this.shut = shut;
        (map, clock, end) = (forecast.Map, forecast.Clock, forecast.EndClock);
        double rate = clock.RateAt(forecast.EndTime);
        flows = [.. forecast.Vents.Select((vent, k) => shut[k] <= forecast.EndTime || rate <= 0 ? 0 : vent.ResinOutRate / rate)];
    }

    /// <summary>
    /// What happens after the front has arrived; null when the panel neither fills nor is full but for trapped air, and when no vent passes resin
    /// then.
    /// </summary>
    /// <param name="forecast">A forecast with its arrivals.</param>
    /// <param name="shut">When each vent is clamped according to the plan, or no feed is left open [s]; null for one that goes on passing resin.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static AfterFront? Of(Forecast forecast, IReadOnlyList<double?> shut, CancellationToken cancellation)
    {
        if (forecast.Outcome is not (Outcome.Fills or Outcome.TrapsAir) || !(forecast.EndClock < forecast.Clock.GelClock)) return null;
        AfterFrontFinder finder = new(forecast, shut);
        if (finder.flows.All(static flow => flow <= 0)) return null;
        return forecast.Outcome == Outcome.Fills ? finder.WhenFull(cancellation) : finder.WithTrappedAir();
    }

    private AfterFront WhenFull(CancellationToken cancellation)
    {
        double factor = forecast.Likely.PermeabilityFactor;
        LastResin last = map.LastResinAt(end, cancellation);
        double limit = LastOpening(), leaving = last.ClockWhenLeft(AfterFront.LeftShare);

        // Where some of it stays whatever one waits for, nine tenths of the rest are waited for.
        double leaves = last.LeftAfter(limit - end);
        double advised = leaves > 0 ? end + last.ClockWhenLeft(AfterFront.LeftShare * leaves) : end;
        if (!(advised <= limit)) advised = limit;
        return new AfterFront
        {
            EndTime = forecast.EndTime,
            GelTime = clock.GelTime,
            LastResinOut = TimeBefore(limit, end + leaving),
            LastResinOutFrom = TimeBefore(limit, (end + leaving) / factor),
            LastResinOutTo = TimeBefore(limit, (end + leaving) * factor),
            ClampTime = clock.TimeAt(advised),
            LeftWhenClamped = last.LeftAfter(advised - end),
            Stays = 1 - last.LeftAfter(limit - end),
            StaysAt = last.MiddleOfRest(limit - end),
            Vents = VentsUntil(advised),
        };
    }

    // The resin that filled last lies round the air, where hardly anything flows; how long that bleeds is nothing to wait for.
    private AfterFront WithTrappedAir() => new()
    {
        EndTime = forecast.EndTime,
        GelTime = clock.GelTime,
        AirStays = true,
        ClampTime = forecast.EndTime,
        Vents = VentsUntil(end),
    };

    private VentBleed?[] VentsUntil(double advised) =>
        [.. flows.Select((flow, vent) => flow > 0 ? AtVent(vent, flow, forecast.Vents[vent].ResinOut, shut[vent], advised) : null)];

    private VentBleed AtVent(int vent, double flow, double before, double? shut, double advised)
    {
        double last = shut is double time ? Math.Min(clock.ClockAt(time), clock.GelClock) : clock.GelClock;
        double from = clock.TimeAt(end), to = clock.TimeAt(last);
        BleedPoint[] points = [.. Enumerable.Range(0, Stretches + 1).Select(k => PointAt(from + (to - from) * k / Stretches))];
        return new(flow * clock.RateAt(clock.TimeAt(end)), before, flow * (Math.Min(advised, last) - end), flow * (last - end), HoseVolume(vent), shut, points);

        BleedPoint PointAt(double time) => new(time, flow * Math.Max(0, Math.Min(clock.ClockAt(time), last) - end));
    }

    // The clock at which the last of the vents that pass resin shuts, or gel.
    private double LastOpening()
    {
        double latest = end;
        for (int vent = 0; vent < flows.Length; vent++)
            if (flows[vent] > 0) latest = Math.Max(latest, shut[vent] is double time ? clock.ClockAt(time) : clock.GelClock);
        return Math.Min(latest, clock.GelClock);
    }

    private double? TimeBefore(double limit, double at) => at <= limit ? clock.TimeAt(at) : null;

    private double HoseVolume(int vent) => map.Problem.Network.Nodes
        .Where(node => node.Line == vent && node.Part is LinePart.Vent or LinePart.VentHose).Sum(static node => node.Volume);
}

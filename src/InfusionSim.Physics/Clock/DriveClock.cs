using InfusionSim.Numerics.Integration;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Clock;

/// <summary>The drive clock θ = ∫ Δp/μ dt [-], counted from the opening of the first feed: the bridge between where the resin goes and when.</summary>
/// <remarks>
/// With a viscosity that is the same everywhere, the front depends on θ alone, so another resin or vacuum is another
/// clock on the same flow. Derived by substituting θ for t in Darcy's law with a front. A constant viscosity is exact,
/// any other one integrated to 10⁻¹⁰ of the clock at gel. At gel the clock stops.
/// </remarks>
public sealed class DriveClock
{
    private const double Rounding = 1e-12;

    // A third of a year; what has not gelled by then has long stopped flowing.
    private const double LongestFill = 1e7;

    private readonly ViscosityCourse viscosity;

    private readonly RunningIntegral? fluidity;

    private readonly List<ClockPiece> pieces = [];

    /// <summary>Makes the clock of a resin under a bag.</summary>
    /// <param name="resin">The resin; viscosity above 0.</param>
    /// <param name="bag">The bag; ambient pressure above every pressure under the bag.</param>
    /// <param name="clockOf">Drive clock of a moment that is not a time, +∞ when it never comes; only asked where the bag has such a step.</param>
    /// <exception cref="ArgumentException">When the pressures leave nothing to drive the resin.</exception>
    public DriveClock(Resin resin, Bag bag, Func<Moment, double>? clockOf = null)
    {
        ArgumentNullException.ThrowIfNull(resin);
        ArgumentNullException.ThrowIfNull(bag);
        if (!(bag.Ambient > bag.Pressure) || bag.Steps.Any(step => !(bag.Ambient > step.Pressure)))
            throw new ArgumentException("The ambient pressure must lie above the pressure under the bag.", nameof(bag));
        viscosity = resin.Viscosity.Along(resin.Temperature, resin.MixToOpen);
        GelTime = Math.Min(resin.Gel.TimeFromMixing(resin.Temperature, resin.MixToOpen) - resin.MixToOpen, viscosity.KnownUntil);
        if (!viscosity.IsConstant && GelTime > 0) fluidity = Fluidity(viscosity, Math.Min(GelTime, LongestFill));
        pieces.Add(new(0, 0, bag.Ambient - bag.Pressure));
        TakeSteps(bag, clockOf);
        GelClock = Ahead(pieces[^1], Math.Max(0, GelTime));
    }

    /// <summary>When the resin gels, from the opening of the first feed [s].</summary>
    public double GelTime { get; }

    /// <summary>Drive clock at gel [-]; there it stops, for beyond it nothing flows.</summary>
    public double GelClock { get; }

    /// <summary>Viscosity [Pa·s]; +∞ once it has gelled.</summary>
    /// <param name="time">Time from opening [s], at least 0.</param>
    public double ViscosityAt(double time) => time > GelTime ? double.PositiveInfinity : viscosity.At(time);

    /// <summary>Driving pressure [Pa].</summary>
    /// <param name="time">Time from opening [s], at least 0.</param>
    public double DrivingPressureAt(double time) => PieceAt(time).Pressure;

    /// <summary>Clock per second [1/s]; 0 once it has gelled.</summary>
    /// <param name="time">Time from opening [s], at least 0.</param>
    public double RateAt(double time) => PieceAt(time).Pressure / ViscosityAt(time);

    /// <summary>Drive clock at a time [-].</summary>
    /// <param name="time">Time from opening [s], at least 0.</param>
    public double ClockAt(double time) => time >= GelTime ? GelClock : Ahead(PieceAt(time), time);

    /// <summary>Time at a drive clock [s]; +∞ when it gels before that, and NaN for NaN.</summary>
    /// <param name="clock">Drive clock [-], at least 0.</param>
    public double TimeAt(double clock)
    {
        if (clock >= GelClock) return clock <= GelClock * (1 + Rounding) ? Math.Max(0, GelTime) : double.PositiveInfinity;
        int last = pieces.Count - 1;
        while (last > 0 && clock < pieces[last].Clock) last--;
        return Back(pieces[last], clock);
    }

    private static RunningIntegral Fluidity(ViscosityCourse viscosity, double end) =>
        new(time => 1 / viscosity.At(time), [0, .. viscosity.Kinks.Where(kink => kink > 0 && kink < end), end]);

    // Each step is made when its moment comes; the earliest is looked for again after each, for a faster clock brings the others forward.
    private void TakeSteps(Bag bag, Func<Moment, double>? clockOf)
    {
        List<BagStep> left = [.. bag.Steps];
        while (left.Count > 0)
        {
            ClockPiece now = pieces[^1];
            BagStep next = left.MinBy(step => TimeOf(step.When, now, clockOf))!;
            double time = Math.Max(now.Time, TimeOf(next.When, now, clockOf));
            if (!(time < GelTime)) return;
            pieces.Add(new(time, Ahead(now, time), bag.Ambient - next.Pressure));
            left.Remove(next);
        }
    }

    private double TimeOf(Moment moment, ClockPiece now, Func<Moment, double>? clockOf)
    {
        if (moment is AtTime at) return at.Time;
        if (clockOf is null) throw new ArgumentException("A step of the bag at a place needs the flow to tell when it comes.", nameof(clockOf));
        return Back(now, clockOf(moment));
    }

    private ClockPiece PieceAt(double time)
    {
        int last = pieces.Count - 1;
        while (last > 0 && time < pieces[last].Time) last--;
        return pieces[last];
    }

    private double Ahead(ClockPiece piece, double time) => fluidity is null
        ? piece.Clock + piece.Pressure / viscosity.At(piece.Time) * (time - piece.Time)
        : piece.Clock + piece.Pressure * (fluidity.At(time) - fluidity.At(piece.Time));

    private double Back(ClockPiece piece, double clock) => fluidity is null
        ? piece.Time + (clock - piece.Clock) / (piece.Pressure / viscosity.At(piece.Time))
        : fluidity.Where(Math.Min(fluidity.Whole, fluidity.At(piece.Time) + (clock - piece.Clock) / piece.Pressure));
}

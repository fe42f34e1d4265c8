using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Quality;

namespace InfusionSim.Physics.Flow;

/// <summary>Where the resin goes, on the drive clock: no minute and no resin in it. Safe to read from several threads.</summary>
public sealed class FillMap
{
    private const int FirstMoments = 48;

    private readonly FrontTrack _track;
    private readonly Lock _marching = new();
    private readonly Lock _reading = new();
    private readonly Dictionary<int, (double Clock, double Filled)> _ventsReached = [];
    private (double End, LastResin Last)? _lastResin;

    // One marcher at a time: each holds the whole network.
    private FillStretch? _marched;
    private FillMarcher? _marcher;

    internal FillMap(FillProblem problem, IReadOnlyList<FillStretch> stretches, FrontTrack track, FillTotal total)
    {
        Problem = problem;
        Stretches = stretches;
        _track = track;
        Total = total;
        Reached = stretches.Count == 1 ? stretches[0].Reached : [.. Enumerable.Range(0, track.Arrival.Length).Select(node => stretches.Any(stretch => stretch.Reached[node]))];
    }

    /// <summary>The problem it answers, with all clamps open.</summary>
    public FillProblem Problem { get; }

    /// <summary>The problem as the clamps stand at the end.</summary>
    public FillProblem ProblemAtEnd => Stretches[^1].Problem;

    /// <summary>Whether a feed can reach each node. [nodes].</summary>
    public bool[] Reached { get; }

    /// <summary>When the last place is full, which that is, and the pressure when all is wet.</summary>
    public FillTotal Total { get; }

    /// <summary>Turns of the clamps that were made, and those that are due after the end, in order.</summary>
    public IReadOnlyList<ClampTurn> Turns { get; internal init; } = [];

    /// <summary>Changes of the vacuum that were made, and those that are due after the end, in order.</summary>
    public IReadOnlyList<BagTurn> BagTurns { get; internal init; } = [];

    /// <summary>Drive clock at which the front passes the middle of each node [-]; +∞ where it never does, NaN where there is nothing to fill. [nodes].</summary>
    public double[] Arrival => _track.Arrival;

    /// <summary>Drive clock at which each node is full [-], to within a tenth of the time it takes to fill; +∞ where it never is, NaN where there is nothing to fill. [nodes].</summary>
    public double[] FullClock => _track.Full;

    /// <summary>Arrival on the side one sees through the bag [-]; NaN without cloth. [rows × columns], x fastest.</summary>
    public double[] BagSideArrival => field ??= SideArrival.Of(this, Problem.BagSide);

    /// <summary>Arrival under the lowest layer of laminate, on the mould [-]; NaN without cloth. [rows × columns], x fastest.</summary>
    public double[] ToolSideArrival => field ??= SideArrival.Of(this, Problem.ToolSide);

    /// <summary>How much later the front comes per length of its way, in the lowest layer of laminate [1/m]; NaN where there is none. [rows × columns], x fastest.</summary>
    internal double[] ToolSideSlope => field ??= FrontSlope.OnToolSide(this);

    /// <summary>What the states computed on the way add up to, in order of the clock.</summary>
    public IReadOnlyList<FillTally> Tallies => field ??= _track.Tallies;

    /// <summary>Drive clock at which the last place that can fill is full [-], gas in sealed places left out of account.</summary>
    public double FillClock => Total.Clock;

    /// <summary>Node that fills last [-]; −1 when none can.</summary>
    public int LastCell => Total.LastCell;

    /// <summary>Gas that is sealed in at the end; empty where none is, and where the gas is left out of account (a perfect vacuum, a slope).</summary>
    public IReadOnlyList<GasPocket> Pockets { get; internal init; } = [];

    /// <summary>Whether trapped gas was followed as it pushes back.</summary>
    public bool FollowsGas { get; internal init; }

    /// <summary>Drive clock of a moment of the rules [-]; +∞ when it does not come.</summary>
    public Func<Moment, double> ClockOf { get; internal init; } = static _ => double.PositiveInfinity;

    /// <summary>Drive clock up to which it was taken from a fill that had been followed before [-]; +∞ when all of it was.</summary>
    public double TakenUntil { get; internal init; }

    /// <summary>When the front passes, as it was followed.</summary>
    internal FrontTrack Track => _track;

    /// <summary>What happens between one turn of a clamp and the next, in order.</summary>
    internal IReadOnlyList<FillStretch> Stretches { get; }

    /// <summary>Computes the fill of a panel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="conditions">What is done, what drives it and leaks in; null for nothing.</param>
    /// <param name="moments">How many moments the fill is first looked at [-], at least 2; more are added where the front turns. With gravity they are the intervals of the march.</param>
    /// <param name="progress">Told the share of the work that is done; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="FlowNotSolvedException">When the solver does not reach its tolerance.</exception>
    /// <exception cref="ResinRunsBackException">When gravity would dry a full place again.</exception>
    public static FillMap Compute(
        FillProblem problem,
        FillConditions? conditions = null,
        int moments = FirstMoments,
        Action<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentOutOfRangeException.ThrowIfLessThan(moments, 2);
        return ClampedFill.Follow(problem, conditions ?? FillConditions.None, null, moments, progress, cancellation);
    }

    /// <summary>Computes the fill of the same panel under conditions that differ only in when the minutes come; it goes along with this fill up to the first that differs.</summary>
    /// <param name="conditions">What is done, what drives it and leaks in.</param>
    /// <param name="moments">How many moments the rest of the fill is first looked at [-], at least 2.</param>
    /// <param name="progress">Told the share of the work that is done; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="FlowNotSolvedException">When the solver does not reach its tolerance.</exception>
    /// <exception cref="NotSupportedException">When the resin has weight.</exception>
    public FillMap Again(FillConditions conditions, int moments = FirstMoments, Action<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(conditions);
        ArgumentOutOfRangeException.ThrowIfLessThan(moments, 2);
        if (Problem.Heads is not null) throw new NotSupportedException("A fill that knows the weight of the resin is followed from its beginning.");
        return ClampedFill.Follow(Problem, conditions, this, moments, progress, cancellation);
    }

    /// <summary>When the last place of a problem is full, without its map.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static FillTotal TotalOf(FillProblem problem, CancellationToken cancellation) => problem.Heads is null
        ? FillTotal.Of(problem, Reach.From(problem), FillMarcher.ForecastTolerance, cancellation)
        : GravityMarch.Run(problem, FirstMoments, null, cancellation).Total;

    /// <summary>Computes the panel at one value of the drive clock.</summary>
    /// <param name="clock">Drive clock [-], at least 0.</param>
    /// <param name="withPressure">Whether to compute the pressure too.</param>
    /// <param name="cancellation">Stops the computation.</param>
    public FillState StateAt(double clock, bool withPressure = false, CancellationToken cancellation = default)
    {
        return StateIn(StretchAt(clock), clock, withPressure, FillMarcher.ForecastTolerance, cancellation);
    }

    /// <summary>Computes the panel at one value of the drive clock as if one stretch went on.</summary>
    /// <param name="stretch">A stretch of this fill.</param>
    /// <param name="clock">Drive clock [-], at least that at which the stretch begins.</param>
    /// <param name="withPressure">Whether to compute the pressure too.</param>
    /// <param name="tolerance">Largest imbalance relative to the wet pore volume [-].</param>
    /// <param name="cancellation">Stops the computation.</param>
    internal FillState StateIn(FillStretch stretch, double clock, bool withPressure, double tolerance, CancellationToken cancellation)
    {
        lock (_marching)
        {
            if (!ReferenceEquals(stretch, _marched)) (_marched, _marcher) = (stretch, stretch.Marcher ?? stretch.NewMarcher(Arrival));
            return _marcher!.StateAt(clock, withPressure, tolerance, cancellation);
        }
    }

    /// <summary>When the first resin reaches a vent, and how much of the pore volume is full then; kept, for it is the same for every resin.</summary>
    /// <param name="vent">Index of the vent.</param>
    /// <param name="cancellation">Stops the computation.</param>
    /// <returns>Drive clock, +∞ when none does, and share [-].</returns>
    internal (double Clock, double Filled) VentReached(int vent, CancellationToken cancellation)
    {
        lock (_reading)
        {
            if (_ventsReached.TryGetValue(vent, out (double Clock, double Filled) known)) return known;
            double clock = VentWetting.ClockOf(this, vent, cancellation);
            return _ventsReached[vent] = (clock, double.IsFinite(clock) ? StateAt(clock, cancellation: cancellation).FilledFraction : 0);
        }
    }

    /// <summary>The resin that filled last and how long it takes to a vent; kept, for it is the same for every resin that fills the panel.</summary>
    /// <param name="end">Drive clock at the end [-].</param>
    /// <param name="cancellation">Stops the computation.</param>
    internal LastResin LastResinAt(double end, CancellationToken cancellation)
    {
        lock (_reading)
        {
            if (_lastResin?.End != end) _lastResin = (end, LastResin.Of(this, TravelToVents.Of(ProblemAtEnd, Total.SteadyPressure, cancellation), end));
            return _lastResin.Value.Last;
        }
    }

    /// <summary>The stretch in which a clock lies; on the border of two the earlier one.</summary>
    /// <param name="clock">Drive clock [-].</param>
    internal FillStretch StretchAt(double clock) => Stretches.FirstOrDefault(stretch => clock <= stretch.End) ?? Stretches[^1];

    /// <summary>Drive clock at which the front passes a place on the side one sees through the bag [-]; +∞ where it never does, NaN where there is no cloth.</summary>
    /// <param name="place">The place [m].</param>
    public double ArrivalAt(Point2 place) => PlaceArrival.At(this, Problem.BagSide, BagSideArrival, place);

    /// <summary>Drive clock at which the front passes a place on the mould [-]; +∞ where it never does, NaN where there is no cloth.</summary>
    /// <param name="place">The place [m].</param>
    public double ToolSideArrivalAt(Point2 place) => PlaceArrival.At(this, Problem.ToolSide, ToolSideArrival, place);
}

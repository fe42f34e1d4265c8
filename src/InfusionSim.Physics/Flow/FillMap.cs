using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Gravity;

namespace InfusionSim.Physics.Flow;

/// <summary>Where the resin goes, on the drive clock: no minute and no resin in it. Safe to read from several threads.</summary>
public sealed class FillMap
{
    private const int FirstMoments = 48;

    private readonly FillMarcher _marcher;
    private readonly Lock _marching = new();

    private FillMap(FillProblem problem, bool[] reached, FillTotal total, FillMarcher marcher, double[] arrival, double[] full, IReadOnlyList<FillTally> tallies)
    {
        Problem = problem;
        Reached = reached;
        Total = total;
        _marcher = marcher;
        Arrival = arrival;
        FullClock = full;
        Tallies = tallies;
    }

    /// <summary>The problem it answers.</summary>
    public FillProblem Problem { get; }

    /// <summary>Whether a feed can reach each node. [nodes].</summary>
    public bool[] Reached { get; }

    /// <summary>When the last place is full, which that is, and the pressure when all is wet.</summary>
    public FillTotal Total { get; }

    /// <summary>Drive clock at which the front passes the middle of each node [-]; +∞ where it never does, NaN where there is nothing to fill. [nodes].</summary>
    public double[] Arrival { get; }

    /// <summary>Drive clock at which each node is full [-], to within a tenth of the time it takes to fill; +∞ where it never is, NaN where there is nothing to fill. [nodes].</summary>
    public double[] FullClock { get; }

    /// <summary>Arrival on the side one sees through the bag [-]; NaN without cloth. [rows × columns], x fastest.</summary>
    public double[] BagSideArrival => field ??= SideArrival.Of(this, Problem.BagSide);

    /// <summary>Arrival under the lowest layer of laminate, on the mould [-]; NaN without cloth. [rows × columns], x fastest.</summary>
    public double[] ToolSideArrival => field ??= SideArrival.Of(this, Problem.ToolSide);

    /// <summary>What the states computed on the way add up to, in order of the clock.</summary>
    public IReadOnlyList<FillTally> Tallies { get; }

    /// <summary>Drive clock at which the last place that can fill is full [-], gas in sealed places left out of account.</summary>
    public double FillClock => Total.Clock;

    /// <summary>Node that fills last [-]; −1 when none can.</summary>
    public int LastCell => Total.LastCell;

    /// <summary>Computes the fill of a panel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="progress">Told the share of the work that is done; may be null.</param>
    /// <param name="moments">How many moments the fill is first looked at [-], at least 2; more are added where the front turns. With gravity they are the intervals of the march.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="FlowNotSolvedException">When the solver does not reach its tolerance.</exception>
    /// <exception cref="ResinRunsBackException">When gravity would dry a full place again.</exception>
    public static FillMap Compute(FillProblem problem, Action<double>? progress = null, int moments = FirstMoments, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentOutOfRangeException.ThrowIfLessThan(moments, 2);
        bool[] reached = Reach.From(problem);
        if (problem.Heads is not null) return ComputeWithGravity(problem, reached, moments, progress, cancellation);
        FillTotal total = FillTotal.Of(problem, reached, FillMarcher.ForecastTolerance, cancellation);
        FillMarcher marcher = new(problem, reached);
        (double[] arrival, double[] full, IReadOnlyList<FillTally> tallies) = FrontTracker.Follow(problem, marcher, total.Clock, moments, progress, cancellation);
        return new FillMap(problem, reached, total, marcher, arrival, full, tallies);
    }

    /// <summary>When the last place of a problem is full, without its map.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static FillTotal TotalOf(FillProblem problem, CancellationToken cancellation) => problem.Heads is null
        ? FillTotal.Of(problem, Reach.From(problem), FillMarcher.ForecastTolerance, cancellation)
        : GravityMarch.Run(problem, FirstMoments, null, cancellation).Total;

    private static FillMap ComputeWithGravity(FillProblem problem, bool[] reached, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        GravityFill fill = GravityMarch.Run(problem, moments, share => progress?.Invoke(share / 2), cancellation);
        FillMarcher marcher = fill.NewMarcher();
        (double[] arrival, double[] full, IReadOnlyList<FillTally> tallies) =
            FrontTracker.Follow(fill.Problem, marcher, fill.Total.Clock, moments, share => progress?.Invoke((1 + share) / 2), cancellation);
        return new FillMap(problem, reached, fill.Total, marcher, arrival, full, tallies);
    }

    /// <summary>Computes the panel at one value of the drive clock.</summary>
    /// <param name="clock">Drive clock [-], at least 0.</param>
    /// <param name="withPressure">Whether to compute the pressure too.</param>
    /// <param name="cancellation">Stops the computation.</param>
    public FillState StateAt(double clock, bool withPressure = false, CancellationToken cancellation = default)
    {
        lock (_marching) return _marcher.StateAt(clock, withPressure, cancellation: cancellation);
    }

    /// <summary>Drive clock at which the front passes a place on the side one sees through the bag [-]; +∞ where it never does, NaN where there is no cloth.</summary>
    /// <param name="place">The place [m].</param>
    public double ArrivalAt(Point2 place) => PlaceArrival.At(this, Problem.BagSide, BagSideArrival, place);

    /// <summary>Drive clock at which the front passes a place on the mould [-]; +∞ where it never does, NaN where there is no cloth.</summary>
    /// <param name="place">The place [m].</param>
    public double ToolSideArrivalAt(Point2 place) => PlaceArrival.At(this, Problem.ToolSide, ToolSideArrival, place);
}

using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;

namespace InfusionSim.Physics.Flow;

/// <summary>When the last place is full, and which that is, without following the fill.</summary>
/// <remarks>
/// A u = C gives the accumulated pressure that the whole fill consumes, A P = g the pressure when all is wet; a cell that
/// was full last has accumulated θP − u = 0, so θ = max u/P. Without an open vent, and all feeds at the full pressure,
/// P is 1 everywhere and one solve is enough. A place that open vents starve would take so long that it never fills in
/// practice: it is left out beyond a hundred times the clock at which half the pore volume is full (our own limit; resin
/// gels long before). A hose behind a vent is mostly still filling when the cloth is full: line nodes that are late hold the bag's pressure
/// and take no part (<see cref="LateLines"/>). Gas in sealed places is left out of account. Derived from the integral
/// over time of Darcy's law; the transform is that of Elliott and Janovský, Proc. R. Soc. Edinburgh A 88 (1981) 93 (from memory).
/// </remarks>
public sealed class FillTotal
{
    private const double Tie = 1e-9;

    /// <summary>How many times the clock of half the volume a place may take before it counts as never full [-].</summary>
    internal const double Starved = 100;

    // Each pass dries or wets all line nodes that are on the wrong side; two or three settle it.
    private const int PassLimit = 40;

    internal FillTotal(double clock, int lastCell, double[] steadyPressure, bool[] fills)
    {
        Fills = fills;
        Clock = clock;
        LastCell = lastCell;
        SteadyPressure = steadyPressure;
    }

    /// <summary>Drive clock at which the last place that can fill is full [-]; 0 when none can.</summary>
    public double Clock { get; }

    /// <summary>Node of a layer that fills last, the lowest and then the leftmost of equals [-]; −1 when none can fill. Lines do not count: the panel is full without them.</summary>
    public int LastCell { get; }

    /// <summary>Whether each node fills at all. [nodes].</summary>
    public bool[] Fills { get; }

    /// <summary>Pressure above the bag's over the driving pressure when everything is wet [-]; 0 where resin cannot go. [nodes].</summary>
    public double[] SteadyPressure { get; }

    /// <summary>Computes the end of a fill.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Nodes that a feed can reach. [nodes].</param>
    /// <param name="tolerance">Largest sum of imbalances relative to the pore volume [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FillTotal Of(FillProblem problem, bool[] reached, double tolerance, CancellationToken cancellation = default) =>
        Of(problem, reached, FillStart.Dry(problem), tolerance, cancellation);

    /// <summary>Computes the end of a fill that goes on from a start; nodes full then stay full and are not looked for.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Nodes that a feed can reach. [nodes].</param>
    /// <param name="start">The panel as this stretch of the fill begins.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to what can still be taken in [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FillTotal Of(FillProblem problem, bool[] reached, FillStart start, double tolerance, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentNullException.ThrowIfNull(reached);
        ArgumentNullException.ThrowIfNull(start);
        bool[] wet = [.. reached];
        double[] room = start.IsDry ? problem.PoreVolume : start.RoomIn(problem);
        for (int pass = 0; ; pass++)
        {
            FillTotal total = WhenWet(problem, wet, room, start.Clock, tolerance, cancellation, out double[] full);
            if (pass == PassLimit || !LateLines.Correct(problem, room, reached, wet, full, total.Clock - start.Clock, total.SteadyPressure)) return total;
        }
    }

    private static FillTotal WhenWet(
        FillProblem problem, bool[] wet, double[] room, double from, double tolerance, CancellationToken cancellation, out double[] full)
    {
        int count = problem.Operator.NodeCount;
        double[] consumed = new double[count], pressure = new double[count], load = new double[count];
        SteadySolver solver = new(problem.Operator, wet);
        for (int cell = 0; cell < count; cell++) load[cell] = wet[cell] ? room[cell] : 0;
        Demand(solver.Solve(load, consumed, tolerance, cancellation));
        bool uniform = problem.Heads is null && problem.FeedPressures.All(static p => p == 1) && !problem.VentPassesResin.Any(static passes => passes) && !LateLines.AreAny(problem, wet);
        if (uniform)
        {
            for (int cell = 0; cell < count; cell++) pressure[cell] = wet[cell] ? 1 : 0;
        }
        else
        {
            Demand(solver.Solve(problem.Supply(), pressure, tolerance, cancellation));
        }

        full = new double[count];
        for (int cell = 0; cell < count; cell++)
            full[cell] = wet[cell] && pressure[cell] > 0 ? consumed[cell] / pressure[cell] : double.PositiveInfinity;
        double limit = uniform ? double.MaxValue : Starved * (from + HalfFull(full, load[..problem.Operator.CellCount]));
        bool[] fills = new bool[count];
        for (int cell = 0; cell < count; cell++) fills[cell] = load[cell] == 0 ? wet[cell] : double.IsFinite(full[cell]) && full[cell] <= limit;
        (double end, int last) = LastOf(full, [.. fills.Select((isIn, cell) => isIn && load[cell] > 0)], problem.Operator.CellCount);
        return new FillTotal(from + end, last, pressure, fills);
    }

    /// <summary>Clock by which half the pore volume is full when each place fills at its own.</summary>
    private static double HalfFull(double[] full, double[] poreVolume)
    {
        double half = poreVolume.Sum() / 2, sum = 0;
        foreach (int cell in Enumerable.Range(0, poreVolume.Length).Where(cell => poreVolume[cell] > 0).OrderBy(cell => full[cell]))
        {
            sum += poreVolume[cell];
            if (sum >= half) return full[cell];
        }

        return 0;
    }

    private static (double Clock, int Cell) LastOf(double[] full, bool[] fills, int cells)
    {
        double clock = 0, kept = 0;
        int last = -1;
        for (int cell = 0; cell < cells; cell++)
        {
            if (!fills[cell]) continue;
            clock = Math.Max(clock, full[cell]);
            if (last >= 0 && full[cell] <= kept * (1 + Tie)) continue;
            (kept, last) = (full[cell], cell);
        }

        return (clock, last);
    }

    private static void Demand(SolveReport report)
    {
        if (report.Reason == StopReason.IterationLimit || report.Imbalance > FillMarcher.WorstAccepted)
            throw new FlowNotSolvedException($"The pressure of the wet panel was not found: {report}.");
    }
}

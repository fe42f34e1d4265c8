using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;

namespace InfusionSim.Physics.Flow;

/// <summary>When the last place is full, and which that is, without following the fill.</summary>
/// <remarks>
/// A u = C gives the accumulated pressure that the whole fill consumes, A P = g the pressure when all is wet; a cell that
/// was full last has accumulated θP − u = 0, so θ = max u/P. Without an open vent, and all feeds at the full pressure,
/// P is 1 everywhere and one solve is enough. Gas in sealed places is left out of account. Derived from the integral
/// over time of Darcy's law; the transform is that of Elliott and Janovský, Proc. R. Soc. Edinburgh A 88 (1981) 93 (from memory).
/// </remarks>
public sealed class FillTotal
{
    private const double Tie = 1e-9;

    private FillTotal(double clock, int lastCell, double[] steadyPressure)
    {
        Clock = clock;
        LastCell = lastCell;
        SteadyPressure = steadyPressure;
    }

    /// <summary>Drive clock at which the last place that can fill is full [-]; 0 when none can.</summary>
    public double Clock { get; }

    /// <summary>Cell that fills last, the lowest and then the leftmost of equals [-]; −1 when none can fill.</summary>
    public int LastCell { get; }

    /// <summary>Pressure above the bag's over the driving pressure when everything is wet [-]; 0 where resin cannot go. [rows × columns], x fastest.</summary>
    public double[] SteadyPressure { get; }

    /// <summary>Computes the end of a fill.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Cells that a feed can reach. [rows × columns], x fastest.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to the pore volume [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FillTotal Of(FillProblem problem, bool[] reached, double tolerance, CancellationToken cancellation = default)
    {
        int count = problem.Operator.CellCount;
        double[] consumed = new double[count], pressure = new double[count], load = new double[count];
        SteadySolver solver = new(problem.Operator, reached);
        for (int cell = 0; cell < count; cell++) load[cell] = reached[cell] ? problem.PoreVolume[cell] : 0;
        Demand(solver.Solve(load, consumed, tolerance, cancellation));
        bool uniform = problem.FeedPressures.All(static p => p == 1) && !problem.VentPassesResin.Any(static passes => passes);
        if (uniform)
        {
            for (int cell = 0; cell < count; cell++) pressure[cell] = reached[cell] ? 1 : 0;
        }
        else
        {
            Demand(solver.Solve(problem.Supply(), pressure, tolerance, cancellation));
        }

        double clock = 0;
        int last = -1;
        for (int cell = 0; cell < count; cell++)
        {
            if (!reached[cell] || pressure[cell] <= 0) continue;
            double full = consumed[cell] / pressure[cell];
            if (full <= clock * (1 + Tie) && last >= 0) continue;
            clock = full;
            last = cell;
        }

        // The tie rule may have kept a cell a hair before the very last.
        for (int cell = 0; cell < count; cell++)
            if (reached[cell] && pressure[cell] > 0) clock = Math.Max(clock, consumed[cell] / pressure[cell]);
        return new FillTotal(clock, last, pressure);
    }

    private static void Demand(SolveReport report)
    {
        if (report.Reason == StopReason.IterationLimit || report.Imbalance > 1e-6)
            throw new FlowNotSolvedException($"The pressure of the wet panel was not found: {report}.");
    }
}

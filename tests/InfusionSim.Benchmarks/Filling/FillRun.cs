using InfusionSim.Numerics.Complementarity;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Benchmarks.Filling;

/// <summary>The fill that is timed.</summary>
internal static class FillRun
{
    /// <summary>Imbalance relative to the wet pore volume [-].</summary>
    public const double Tolerance = 1e-6;

    /// <summary>Moments of a fill [-].</summary>
    public const int Moments = 50;

    /// <summary>Cells that the feed can reach: all that have cloth, on this panel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    public static bool[] ReachedIn(FillProblem problem) => [.. problem.PoreVolume.Select(static volume => volume > 0)];

    /// <summary>Sets up the solver and computes fifty moments, evenly spaced in front travel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Cells that a feed can reach.</param>
    /// <param name="end">Drive clock at which the last place is full [-].</param>
    /// <returns>Multigrid cycles in all.</returns>
    public static int FiftyMoments(FillProblem problem, bool[] reached, double end)
    {
        double[] capacity = [.. problem.PoreVolume.Select((volume, cell) => reached[cell] ? volume : 0)];
        ObstacleSolver solver = new(problem.Operator, capacity, problem.Supply());
        int cycles = 0;
        for (int moment = 1; moment <= Moments; moment++)
        {
            double share = (double)moment / Moments;
            cycles += solver.Solve(end * share * share, Tolerance).Cycles;
        }

        return cycles;
    }
}

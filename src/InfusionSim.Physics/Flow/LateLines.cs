using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Flow;

/// <summary>Nodes of lines and gaps that are not yet full when the last of the cloth is.</summary>
/// <remarks>
/// As long as a node is not full it stands at the pressure under the bag, w = 0, and takes in what flows to it. So the end of the fill is the state in which the
/// wet nodes have w = θ P − u ≥ 0 and the others have taken in no more than they hold, with θ the clock at which the last cell has w = 0. The wet set is
/// corrected until both hold.
/// </remarks>
internal static class LateLines
{
    private const double Rounding = 1e-9;

    /// <summary>Whether a node of a line takes no part.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="wet">Which nodes take part. [nodes].</param>
    public static bool AreAny(FillProblem problem, bool[] wet)
    {
        for (int node = problem.Operator.CellCount; node < wet.Length; node++)
            if (!wet[node]) return true;
        return false;
    }

    /// <summary>Moves line nodes that are on the wrong side of the wet set; false when there are none.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="room">What each node can still take in [m³]. [nodes].</param>
    /// <param name="reached">Nodes that a feed can reach. [nodes].</param>
    /// <param name="wet">Which nodes take part; corrected. [nodes].</param>
    /// <param name="full">Clock at which each node of the wet set is full [-]. [nodes].</param>
    /// <param name="end">Clock at which the last cell is full with this wet set [-].</param>
    /// <param name="steadyPressure">Pressure when the wet set is full [-]. [nodes].</param>
    public static bool Correct(
        FillProblem problem, double[] room, bool[] reached, bool[] wet, double[] full, double end, double[] steadyPressure)
    {
        bool changed = false;
        double[]? supply = null;
        List<NodeNeighbour> neighbours = [];
        for (int node = problem.Operator.CellCount; node < wet.Length; node++)
        {
            if (!reached[node] || (room[node] == 0 && problem.PoreVolume[node] > 0)) continue;
            bool wanted = wet[node] ? full[node] <= end * (1 + Rounding) : Offered(node) > room[node] * (1 + Rounding);
            if (wanted == wet[node]) continue;
            changed = true;
            wet[node] = wanted;
        }

        return changed;

        double Offered(int node)
        {
            supply ??= problem.Supply();
            problem.Operator.CollectNeighbours(node, neighbours);
            double sum = supply[node] * end;
            foreach (NodeNeighbour neighbour in neighbours)
            {
                if (neighbour.Node < full.Length && double.IsFinite(full[neighbour.Node]))
                    sum += neighbour.Conductance * steadyPressure[neighbour.Node] * Math.Max(0, end - full[neighbour.Node]);
            }

            return sum;
        }
    }
}

using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Gravity;

/// <summary>Full places on a slope that no open feed presses on.</summary>
/// <remarks>
/// There the resin stays where it is only if it finds no way down: towards dry cloth or an open vent the pressure is that under the bag, and
/// falls by ρg per metre upwards, so that whatever lies higher would be drawn empty. Hydrostatics, derived.
/// </remarks>
internal static class RestingResin
{
    // A place that misses less than this share is full but for rounding.
    private const double Rounding = 1e-6;

    // Of the drive; heights of squares in one row agree to rounding.
    private const double Level = 1e-9;

    /// <summary>Pressure above the bag's over the driving pressure in those places [-]; 0 elsewhere. [nodes].</summary>
    /// <param name="problem">A problem with heads, with the clamps as they stand.</param>
    /// <param name="pressed">Nodes that a feed presses on. [nodes].</param>
    /// <param name="start">The panel as the stretch begins.</param>
    /// <exception cref="ResinRunsBackException">When resin would run down.</exception>
    public static double[] PressureOf(FillProblem problem, bool[] pressed, FillStart start)
    {
        double[] heads = problem.Heads!, pressure = new double[heads.Length];
        if (start.IsDry) return pressure;
        HashSet<int> vented = VentedNodes(problem);
        bool[] isSeen = [.. pressed];
        for (int first = 0; first < heads.Length; first++)
        {
            if (isSeen[first] || !IsFull(start, first) || problem.PoreVolume[first] <= 0) continue;
            (List<int> group, double lowestWayOut) = GroupOf(problem, start, first, isSeen, vented);
            int highest = group.MaxBy(node => heads[node]);
            if (heads[highest] > lowestWayOut + Level) throw new ResinRunsBackException(PlaceOf(problem, highest), start.Clock);
            foreach (int node in group) pressure[node] = heads[highest] - heads[node];
        }

        return pressure;
    }

    /// <summary>Where a node lies [m]; null for a place in a line that has none.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="node">Index of the node.</param>
    public static Numerics.Geometry.Point2? PlaceOf(FillProblem problem, int node) =>
        problem.CellOf(node) is >= 0 and int cell ? problem.Cells.CentroidOf(cell) : problem.Network[node].At;

    private static (List<int> Group, double LowestWayOut) GroupOf(FillProblem problem, FillStart start, int first, bool[] isSeen, HashSet<int> vented)
    {
        List<int> group = [];
        double lowest = double.PositiveInfinity;
        Stack<int> open = new([first]);
        List<NodeNeighbour> neighbours = [];
        isSeen[first] = true;
        while (open.TryPop(out int node))
        {
            group.Add(node);
            if (vented.Contains(node)) lowest = Math.Min(lowest, problem.Heads![node]);
            problem.Operator.CollectNeighbours(node, neighbours);
            foreach ((int other, double conductance) in neighbours)
            {
                if (!(conductance > 0) || problem.PoreVolume[other] <= 0) continue;
                if (!IsFull(start, other) && IsWayOut(problem, other)) lowest = Math.Min(lowest, problem.Heads![other]);
                if (isSeen[other] || !IsFull(start, other)) continue;
                isSeen[other] = true;
                open.Push(other);
            }
        }

        return (group, lowest);
    }

    // A line that has fed stays full of resin when its clamp is shut, and what a shut vent line still takes in is next to nothing.
    private static bool IsWayOut(FillProblem problem, int node)
    {
        if (problem.CellOf(node) >= 0) return true;
        LineNode line = problem.Network[node];
        return line.Part == LinePart.Gap || (line.Part is LinePart.Vent or LinePart.VentHose && problem.VentIsOpen[line.Line]);
    }

    private static bool IsFull(FillStart start, int node) => start.Saturation[node] > 1 - Rounding;

    private static HashSet<int> VentedNodes(FillProblem problem)
    {
        HashSet<int> vented = [.. problem.Network.Drains.Select(static (LineEnd drain) => drain.Node)];
        for (int vent = 0; vent < problem.Vents.Count; vent++)
        {
            if (!problem.VentPassesResin[vent]) continue;
            vented.UnionWith(problem.Vents[vent].Contacts.Where(static contact => contact.LineNode < 0).Select(static contact => contact.Cell));
        }

        return vented;
    }
}

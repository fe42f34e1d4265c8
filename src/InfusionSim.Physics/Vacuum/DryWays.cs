using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Vacuum;

/// <summary>The ways of gas through dry cloth: the conductances of the panel between dry nodes, with the vents alone held at a fixed pressure.</summary>
/// <remarks>A wet node is a wall to gas, and so is a feed: its own line is not counted as a way unless it has a bore of its own.</remarks>
internal static class DryWays
{
    /// <summary>Conductances between dry nodes, membranes counted as the open vents that they are to gas.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="dry">Whether each node is dry. [nodes].</param>
    public static LatticeOperator Of(FillProblem problem, bool[] dry)
    {
        LatticeOperator from = problem.Operator;
        var ways = new LatticeOperator(from.Columns, from.Rows, from.Layers, from.LineNodes);
        foreach (StencilWay way in from.Ways)
        {
            double[] conductance = ways.Way(way.Right, way.Up).Conductance;
            int step = way.Up * from.Columns + way.Right;
            for (int node = 0; node < conductance.Length; node++)
                if (way.Conductance[node] > 0 && dry[node] && dry[node + step]) conductance[node] = way.Conductance[node];
        }

        for (int node = 0; node < from.Above.Length; node++)
            if (from.Above[node] > 0 && dry[node] && dry[node + from.CellsInLayer]) ways.Above[node] = from.Above[node];
        foreach (NodeLink link in from.Links)
            if (dry[link.First] && dry[link.Second]) ways.Link(link.First, link.Second, link.Conductance);
        foreach (CellContact contact in problem.Vents.SelectMany(static vent => vent.Contacts))
            if (contact.LineNode < 0 && dry[contact.Cell]) ways.Anchor[contact.Cell] += contact.Conductance;
        foreach (LineEnd drain in problem.Network.Drains)
            if (dry[drain.Node]) ways.Anchor[drain.Node] += drain.Conductance;
        return ways;
    }

    /// <summary>Nodes from which gas finds a way to a vent. [nodes].</summary>
    /// <param name="ways">Conductances between dry nodes.</param>
    public static bool[] ToVents(LatticeOperator ways)
    {
        bool[] open = new bool[ways.NodeCount];
        var waiting = new Queue<int>();
        var beside = new List<NodeNeighbour>();
        for (int node = 0; node < open.Length; node++)
            if (ways.Anchor[node] > 0) Reach(node);
        while (waiting.TryDequeue(out int at))
        {
            ways.CollectNeighbours(at, beside);
            foreach (NodeNeighbour one in beside) Reach(one.Node);
        }

        return open;

        void Reach(int node)
        {
            if (open[node]) return;
            open[node] = true;
            waiting.Enqueue(node);
        }
    }
}

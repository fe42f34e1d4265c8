using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Network;

namespace InfusionSim.Physics.Flow;

/// <summary>Which nodes a feed can reach along ways that conduct; a feed line or vent line across the panel is a barrier in the layer it lies on.</summary>
internal static class Reach
{
    /// <summary>Marks the nodes that are joined to a feed. [nodes].</summary>
    /// <param name="problem">Conductances and contacts.</param>
    public static bool[] From(FillProblem problem) => From(problem, []);

    /// <summary>Marks the nodes that are joined to a feed, or to one of some nodes. [nodes].</summary>
    /// <param name="problem">Conductances and contacts.</param>
    /// <param name="nodes">The nodes.</param>
    public static bool[] From(FillProblem problem, IEnumerable<int> nodes)
    {
        bool[] reached = new bool[problem.Operator.NodeCount];
        Stack<int> open = new();
        List<NodeNeighbour> neighbours = [];
        for (int feed = 0; feed < problem.Feeds.Count; feed++)
        {
            foreach (var contact in problem.Feeds[feed].Contacts)
            {
                if (contact.LineNode < 0 && problem.FeedPressureAt(feed, contact.Cell) > 0) Visit(contact.Cell);
            }
        }

        foreach (LineEnd source in problem.Network.Sources)
        {
            if (problem.FeedPressureAt(source.Line, source.Node) > 0) Visit(source.Node);
        }

        foreach (int node in nodes) Visit(node);
        while (open.TryPop(out int node))
        {
            problem.Operator.CollectNeighbours(node, neighbours);
            foreach (NodeNeighbour neighbour in neighbours) Visit(neighbour.Node);
        }

        return reached;

        void Visit(int node)
        {
            if (reached[node] || problem.PoreVolume[node] <= 0) return;
            reached[node] = true;
            open.Push(node);
        }
    }
}

using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Network;

/// <summary>Everything resin runs through that is not cloth: hoses, T-pieces, lines with a bore, gaps, as chains of nodes between pots and cloth.</summary>
/// <remarks>
/// A line without bore or hose has no nodes: its pressure is fixed. Nodes are counted from 0 here; in the operator they follow the cells.
/// Between two nodes lies the resistance of the passage from middle to middle, in front of the first one that of half a node, so that an
/// empty hose fills in 4 μ L² / (r² Δp) however many nodes it has (sum of (k − ½) over n nodes = n²/2).
/// </remarks>
public sealed class FeedNetwork
{
    /// <summary>No hose, no bore, no gap.</summary>
    public static FeedNetwork None { get; } = new();

    /// <summary>The nodes.</summary>
    public IReadOnlyList<LineNode> Nodes { get; internal init; } = [];

    /// <summary>Conductances between nodes, those of gaps and the lines that feed them included.</summary>
    public IReadOnlyList<NodeLink> Links { get; internal init; } = [];

    /// <summary>Where nodes hang on the pressure of a feed.</summary>
    public IReadOnlyList<LineEnd> Sources { get; internal init; } = [];

    /// <summary>Where nodes hang on the pressure under the bag, behind a vent.</summary>
    public IReadOnlyList<LineEnd> Drains { get; internal init; } = [];

    /// <summary>Nodes of each feed, in the panel's order; null for one whose pressure is fixed.</summary>
    public IReadOnlyList<NodeChain?> Feeds { get; internal init; } = [];

    /// <summary>Nodes of each vent, in the panel's order; null for one whose pressure is fixed and for a membrane.</summary>
    public IReadOnlyList<NodeChain?> Vents { get; internal init; } = [];

    /// <summary>Nodes of each gap, in the panel's order.</summary>
    public IReadOnlyList<NodeChain> Gaps { get; internal init; } = [];

    /// <summary>Where feeds reach into gaps.</summary>
    public IReadOnlyList<GapContact> FedGaps { get; internal init; } = [];

    /// <summary>Where gaps reach vents that pass resin.</summary>
    public IReadOnlyList<GapContact> VentedGaps { get; internal init; } = [];

    /// <summary>Plans the nodes of a panel; the operator must have room for as many line nodes.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="cloth">Its zones, which tell how high a gap is that names no height.</param>
    public static FeedNetwork Plan(Panel panel, CutCellGrid cells, ClothMap cloth)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(cloth);
        bool isPlain = panel.Gaps.Count == 0 && panel.Feeds.All(feed => feed.Bore is null && feed.Hose is null)
            && panel.Vents.All(vent => vent.Bore is null && vent.Hose is null) && panel.Pots.All(pot => pot.Hose is null);
        return isPlain ? None : new NetworkPlanner(panel, cells, cloth).Plan();
    }

    /// <summary>Writes the conductances that lie outside the cloth.</summary>
    /// <param name="conductances">The operator.</param>
    public void Write(LatticeOperator conductances)
    {
        ArgumentNullException.ThrowIfNull(conductances);
        if (conductances.LineNodes != Nodes.Count) throw new ArgumentException($"The operator has room for {conductances.LineNodes} line nodes; the network has {Nodes.Count}.", nameof(conductances));
        int first = conductances.CellCount;
        foreach (NodeLink link in Links) conductances.Link(first + link.First, first + link.Second, link.Conductance);
        foreach (LineEnd end in Sources.Concat(Drains)) conductances.Anchor[first + end.Node] += end.Conductance;
    }
}

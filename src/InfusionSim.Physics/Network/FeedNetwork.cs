using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Network;

/// <summary>Everything resin runs through that is not cloth: hoses, T-pieces, lines with a bore, gaps, as chains of nodes between pots and cloth.</summary>
/// <remarks>
/// A line without bore or hose has no nodes: its pressure is fixed.
/// Between two nodes lies the resistance of the passage from middle to middle, in front of the first one that of half a node, so that an
/// empty hose fills in 4 μ L² / (r² Δp) however many nodes it has (sum of (k − ½) over n nodes = n²/2).
/// </remarks>
public sealed record FeedNetwork
{
    /// <summary>No hose, no bore, no gap.</summary>
    public static FeedNetwork None { get; } = new();

    /// <summary>Index of its first node: the nodes follow the cells of all layers.</summary>
    public int FirstNode { get; internal init; }

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

    /// <summary>
    /// Node in which the contacts of each feed meet while its clamp is shut, in the panel's order [-]; −1 for a feed that is never shut, and for one
    /// whose own nodes stay.
    /// </summary>
    public IReadOnlyList<int> ShutFeeds { get; internal init; } = [];

    /// <summary>The same for each vent [-].</summary>
    public IReadOnlyList<int> ShutVents { get; internal init; } = [];

    /// <summary>Nodes of a feed; null when its pressure is fixed.</summary>
    /// <param name="feed">Index of the feed.</param>
    public NodeChain? ChainOfFeed(int feed) => Feeds.Count > 0 ? Feeds[feed] : null;

    /// <summary>Nodes of a vent; null when its pressure is fixed, or it passes no resin.</summary>
    /// <param name="vent">Index of the vent.</param>
    public NodeChain? ChainOfVent(int vent) => Vents.Count > 0 ? Vents[vent] : null;

    /// <summary>The node with an index of the operator.</summary>
    /// <param name="node">The index, at least <see cref="FirstNode"/>.</param>
    public LineNode this[int node] => Nodes[node - FirstNode];

    /// <summary>Plans the nodes of a panel; the operator must have room for as many line nodes.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="cloth">Its zones, which tell how high a gap is that names no height.</param>
    /// <param name="firstNode">Index of the first line node: the number of cells in all layers.</param>
    public static FeedNetwork Plan(Panel panel, CutCellGrid cells, ClothMap cloth, int firstNode)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(cells);
        ArgumentNullException.ThrowIfNull(cloth);
        bool isPlain = panel.Gaps.Count == 0 && panel.Feeds.All(feed => feed.Bore is null && feed.Hose is null)
            && panel.Vents.All(vent => vent.Bore is null && vent.Hose is null) && panel.Pots.All(pot => pot.Hose is null)
            && panel.Feeds.All(static feed => feed.Clamp.IsAlwaysOpen) && panel.Vents.All(static vent => vent.Clamp.IsAlwaysOpen);
        return isPlain ? None : new NetworkPlanner(panel, cells, cloth, firstNode).Plan();
    }

    /// <summary>Writes the conductances that lie outside the cloth.</summary>
    /// <param name="conductances">The operator.</param>
    public void Write(LatticeOperator conductances)
    {
        ArgumentNullException.ThrowIfNull(conductances);
        foreach (NodeLink link in Links) conductances.Link(link.First, link.Second, link.Conductance);
        foreach (LineEnd end in Sources.Concat(Drains)) conductances.Anchor[end.Node] += end.Conductance;
    }
}

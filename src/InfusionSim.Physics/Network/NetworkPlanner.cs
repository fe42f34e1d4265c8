using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Network;

/// <summary>Lays out the nodes of hoses, lines and gaps one after another.</summary>
internal sealed class NetworkPlanner
{
    // The total time does not depend on it, only how the resin is seen to run through.
    private const int NodesInHose = 8;

    // A node must hold something to be known as full: a T-piece and a line without bore take this share of the hose before them.
    private const double JunctionShare = 1e-6;

    private readonly Panel panel;
    private readonly CutCellGrid cells;
    private readonly ClothMap cloth;
    private readonly int firstNode;
    private readonly List<LineNode> nodes = [];
    private readonly List<NodeLink> links = [];
    private readonly List<LineEnd> sources = [], drains = [];

    /// <summary>Makes a planner without nodes.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Its cells.</param>
    /// <param name="cloth">Its zones.</param>
    /// <param name="firstNode">Index of the first node.</param>
    public NetworkPlanner(Panel panel, CutCellGrid cells, ClothMap cloth, int firstNode)
    {
        this.firstNode = firstNode;
        this.panel = panel;
        this.cells = cells;
        this.cloth = cloth;
    }

    /// <summary>Plans all nodes.</summary>
    public FeedNetwork Plan()
    {
        Dictionary<string, HoseEnd> potHoses = [];
        NodeChain?[] feeds = [.. panel.Feeds.Select((feed, k) => PlanFeed(feed, k, potHoses))];
        NodeChain?[] vents = [.. panel.Vents.Select(PlanVent)];
        int[] shutFeeds = [.. panel.Feeds.Select((feed, k) => PlanShut(feed.Clamp, feed.Path, feed.ContactWidth, feeds[k], LinePart.Feed, k))];
        int[] shutVents = [.. panel.Vents.Select((vent, k) => vent.Kind == VentKind.Tube ? PlanShut(vent.Clamp, vent.Path, vent.ContactWidth, vents[k], LinePart.Vent, k) : -1)];
        NodeChain[] gaps = [.. panel.Gaps.Select(PlanGap)];
        GapJoints joints = new(panel, gaps, links);
        List<GapContact> fed = [], vented = [];
        for (int k = 0; k < feeds.Length; k++) fed.AddRange(joints.Of(panel.Feeds[k].Path, panel.Feeds[k].ContactWidth, k, feeds[k]));
        for (int k = 0; k < vents.Length; k++)
        {
            if (panel.Vents[k].Kind == VentKind.Tube) vented.AddRange(joints.Of(panel.Vents[k].Path, panel.Vents[k].ContactWidth, k, vents[k]));
        }

        joints.JoinGaps();
        foreach (GapContact contact in fed) Join(contact.LineNode, contact.GapNode, contact.Conductance, contact.Line, sources);
        foreach (GapContact contact in vented) Join(contact.LineNode, contact.GapNode, contact.Conductance, contact.Line, drains);
        return new()
        {
            FirstNode = firstNode,
            Nodes = nodes,
            Links = links,
            Sources = sources,
            Drains = drains,
            Feeds = feeds,
            Vents = vents,
            Gaps = gaps,
            FedGaps = fed,
            VentedGaps = vented,
            ShutFeeds = shutFeeds,
            ShutVents = shutVents,
        };
    }

    private NodeChain? PlanFeed(Feed feed, int index, Dictionary<string, HoseEnd> potHoses)
    {
        HoseEnd end = HoseEnd.Fixed;
        if (panel.Pots.FirstOrDefault(pot => pot.Name == feed.Pot) is { Hose: Hose potHose } pot)
        {
            if (!potHoses.TryGetValue(pot.Name, out end))
            {
                end = Along(HoseEnd.Fixed, potHose, LinePart.PotHose, index, sources);
                end = potHoses[pot.Name] = new(Junction(end, LinePart.PotHose, index, null, potHose, sources), 0);
            }
        }

        return PlanLine(end, feed.Path, feed.Bore, feed.Hose, feed.Hose ?? panel.Pots.FirstOrDefault(pot => pot.Name == feed.Pot)?.Hose, index, isFeed: true);
    }

    private NodeChain? PlanVent(Vent vent, int index) =>
        vent.Kind == VentKind.Tube ? PlanLine(HoseEnd.Fixed, vent.Path, vent.Bore, vent.Hose is Hose hose ? hose with { IsPrimed = false } : null, vent.Hose, index, isFeed: false) : null;

    private NodeChain? PlanLine(HoseEnd end, LinePath path, double? bore, Hose? hose, Hose? sizedBy, int index, bool isFeed)
    {
        List<LineEnd> ends = isFeed ? sources : drains;
        LinePart part = isFeed ? LinePart.Feed : LinePart.Vent;
        if (hose is not null) end = Along(end, hose, isFeed ? LinePart.FeedHose : LinePart.VentHose, index, ends);
        if (bore is double inner && Length(path) > 0)
        {
            NodeChain chain = Chain(path, part, index, _ => (Math.PI * inner * inner / 4, Passages.Round(inner / 2)));
            double station = hose?.JoinsAt is Point2 place ? chain.StationNear(place) : 0;
            foreach ((int reached, double conductance) in Branch.Join(links, chain, station, end.Resistance)) Join(end.Node, reached, conductance, index, ends);
            return chain;
        }

        if (end == HoseEnd.Fixed) return null;
        int node = end.Resistance > 0 ? Junction(end, part, index, path.Points[0], sizedBy!, ends) : end.Node;
        return new NodeChain(path.Points, [0, Length(path)], node, [double.PositiveInfinity]);
    }

    // A line without nodes of its own, or one that hangs on a T-piece, is held at a pressure while open. Shut, it is a passage in which the places it
    // touches meet.
    private int PlanShut(Clamp clamp, LinePath path, double contactWidth, NodeChain? chain, LinePart part, int index)
    {
        bool hangsOnJunction = chain is not null && nodes[chain.First - firstNode] is { Part: LinePart.PotHose };
        if (clamp.IsAlwaysOpen || (chain is not null && !hangsOnJunction)) return -1;
        double volume = JunctionShare * contactWidth * contactWidth * Math.Max(Length(path), contactWidth);
        return Add(new(part, index, volume, path.Points[0]));
    }

    private NodeChain PlanGap(Gap gap, int index)
    {
        if (Length(gap.Path) == 0) throw new InvalidOperationException($"Gap '{gap.Name}' has no length; it needs two points.");
        GapHeights heights = new(gap, cells, cloth);
        return Chain(gap.Path, LinePart.Gap, index, place =>
        {
            double height = heights.At(place);
            return (gap.Width * height, Passages.Duct(gap.Width, height));
        });
    }

    private NodeChain Chain(LinePath path, LinePart part, int index, Func<Point2, (double Section, double Permeability)> passageAt)
    {
        double[] cuts = PathElements.Cuts(path.Points, cells.Grid), conductances = new double[cuts.Length - 1];
        NodeChain chain = new(path.Points, cuts, NextNode, conductances);
        int first = chain.First, last = first + chain.Count - 1;
        for (int node = first; node <= last; node++)
        {
            Point2 middle = chain.At(chain.StationOf(node));
            (double section, double permeability) = passageAt(middle);
            conductances[node - first] = section * permeability;
            Add(new(part, index, section * chain.LengthOf(node), middle));
            if (node > first) links.Add(new(node - 1, node, 1 / (chain.HalfResistance(node - 1) + chain.HalfResistance(node))));
        }

        // A path that ends where it began is a ring.
        if (path.Points[0] == path.Points[^1] && chain.Count > 2) links.Add(new(first, last, 1 / (chain.HalfResistance(first) + chain.HalfResistance(last))));
        return chain;
    }

    private HoseEnd Along(HoseEnd from, Hose hose, LinePart part, int index, List<LineEnd> ends)
    {
        double radius = hose.Bore / 2, resistance = hose.Length / Passages.RoundConductance(radius);
        if (hose.IsPrimed) return new(from.Node, from.Resistance + resistance);
        double volume = Math.PI * radius * radius * hose.Length / NodesInHose, half = resistance / NodesInHose / 2;
        HoseEnd end = from;
        for (int k = 0; k < NodesInHose; k++)
        {
            int node = Add(new(part, index, volume, null));
            Connect(end, node, half, index, ends);
            end = new(node, half);
        }

        return end;
    }

    private int Junction(HoseEnd end, LinePart part, int index, Point2? at, Hose sizedBy, List<LineEnd> ends)
    {
        double volume = JunctionShare * Math.PI * sizedBy.Bore * sizedBy.Bore / 4 * sizedBy.Length;
        if (end.Node >= 0 && nodes[end.Node - firstNode] is { Part: LinePart.FeedHose or LinePart.PotHose or LinePart.VentHose } last && last.Volume > 2 * volume)
            nodes[end.Node - firstNode] = last with { Volume = last.Volume - volume };
        int node = Add(new(part, index, volume, at));
        Connect(end, node, 0, index, ends);
        return node;
    }

    private int NextNode => firstNode + nodes.Count;

    private int Add(LineNode node)
    {
        nodes.Add(node);
        return NextNode - 1;
    }

    private void Connect(HoseEnd end, int node, double further, int index, List<LineEnd> ends)
    {
        Join(end.Node, node, 1 / (end.Resistance + further), index, ends);
    }

    private void Join(int before, int node, double conductance, int index, List<LineEnd> ends)
    {
        if (before < 0) ends.Add(new(node, conductance, index));
        else links.Add(new(before, node, conductance));
    }

    private static double Length(LinePath path) => Lines.Segment.Between(path.Points).Sum(segment => segment.Length);
}

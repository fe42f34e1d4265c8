using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Flow;

/// <summary>A panel as numbers: pore volume of each cell, conductances between cells and to the lines. Knows no minute and no resin.</summary>
/// <remarks>Arrays by node run [layers × rows × columns], x fastest, lowest layer first, then the line nodes; with one layer and no line nodes a node is a cell.</remarks>
public sealed record FillProblem
{
    /// <summary>The panel it was made from; null for a problem made by hand in a test.</summary>
    public Panel? Panel { get; init; }

    /// <summary>Its layers, lowest first; null for a problem made by hand in a test: one layer.</summary>
    public PanelLayers? Stack { get; init; }

    /// <summary>The cells of each layer.</summary>
    public required CutCellGrid Cells { get; init; }

    /// <summary>Conductances between cells, and from cells to all feeds and to vents that pass resin [m³].</summary>
    public required LatticeOperator Operator { get; init; }

    /// <summary>Volume that resin can fill in each node [m³]; 0 where there is nothing to fill. [nodes].</summary>
    public required double[] PoreVolume { get; init; }

    /// <summary>Node that one sees through the bag in each cell: in the uppermost layer there [-]; −1 without cloth. [rows × columns], x fastest.</summary>
    public int[] BagSide { get => field ??= OnlyLayer(); init; }

    /// <summary>Node on the mould in each cell: in the lowest layer of laminate [-]; −1 without cloth. [rows × columns], x fastest.</summary>
    public int[] ToolSide { get => field ??= OnlyLayer(); init; }

    /// <summary>Hoses, lines with a bore and gaps.</summary>
    public FeedNetwork Network { get; init; } = FeedNetwork.None;

    /// <summary>Where each gap touches the cloth, in the panel's order.</summary>
    public IReadOnlyList<LineContact> Gaps { get; init; } = [];

    /// <summary>Where each feed touches the cloth, in the panel's order.</summary>
    public required IReadOnlyList<LineContact> Feeds { get; init; }

    /// <summary>Pressure of each feed above the bag's, over the driving pressure [-]; 1 for a feed at the pressure of the shop. Where heads count, at head 0.</summary>
    public required IReadOnlyList<double> FeedPressures { get; init; }

    /// <summary>Head of each node: weight of a resin column from the lowest feed up to its middle, over the driving pressure [-]; null where it does not count. [nodes].</summary>
    public double[]? Heads { get; init; }

    /// <summary>Where each vent touches the cloth, in the panel's order.</summary>
    public required IReadOnlyList<LineContact> Vents { get; init; }

    /// <summary>Whether each vent passes resin when wet.</summary>
    public required IReadOnlyList<bool> VentPassesResin { get; init; }

    /// <summary>Whether air can leave through each vent: its clamp is not shut.</summary>
    public IReadOnlyList<bool> VentIsOpen { get => field ??= [.. Vents.Select(static _ => true)]; init; }

    /// <summary>Cell of the grid that a node lies in [-]; −1 for a line node.</summary>
    /// <param name="node">Index of the node.</param>
    public int CellOf(int node) => node < Operator.CellCount ? node % Operator.CellsInLayer : -1;

    /// <summary>Whether what a node holds stays in the part: laminate, core and gaps, not mesh, peel ply and lines.</summary>
    /// <param name="node">Index of the node.</param>
    public bool StaysInPart(int node) =>
        node < Operator.CellCount ? Stack?.Layers[node / Operator.CellsInLayer].StaysInPart != false : Network[node].Part == LinePart.Gap;

    /// <summary>Pore volume of laminate and core [m³].</summary>
    public double PartVolume
    {
        get
        {
            double sum = 0;
            for (int node = 0; node < Operator.CellCount; node++)
                if (StaysInPart(node)) sum += PoreVolume[node];
            return sum;
        }
    }

    /// <summary>Pressure at which a feed stands where it touches a node, above the bag's, over the driving pressure [-]; 0 above the height to which the drive lifts the resin.</summary>
    /// <param name="feed">Index of the feed.</param>
    /// <param name="node">Node it touches.</param>
    public double FeedPressureAt(int feed, int node) => Math.Max(0, FeedPressures[feed] - (Heads?[node] ?? 0));

    /// <summary>Supply per unit of drive clock: conductance to each feed times its pressure [m³]. [nodes].</summary>
    public double[] Supply()
    {
        double[] supply = new double[Operator.NodeCount];
        for (int feed = 0; feed < Feeds.Count; feed++)
        {
            foreach (CellContact contact in Feeds[feed].Contacts)
            {
                if (contact.LineNode < 0) supply[contact.Cell] += contact.Conductance * FeedPressureAt(feed, contact.Cell);
            }
        }

        foreach (LineEnd source in Network.Sources) supply[source.Node] += source.Conductance * FeedPressureAt(source.Line, source.Node);
        return supply;
    }

    private int[] OnlyLayer() => [.. Enumerable.Range(0, Operator.CellsInLayer).Select(cell => PoreVolume[cell] > 0 ? cell : -1)];
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Flow;

/// <summary>Turns a panel into numbers: cells, pore volumes, conductances, contacts of the lines.</summary>
public static class FillProblemBuilder
{
    /// <summary>Builds the problem of a panel.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="gridOrigin">Lower left corner of the grid [m], at or below and left of the whole outline; null lets the grid start at the outline's own corner.</param>
    /// <param name="cancellation">Stops the work between its steps.</param>
    /// <exception cref="InvalidOperationException">When a place inside the outline lies in no zone, or a fitting touches no cloth.</exception>
    /// <exception cref="NotSupportedException">When two cores lie at different shares of the thickness.</exception>
    public static FillProblem Build(Panel panel, Point2? gridOrigin = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        cancellation.ThrowIfCancellationRequested();
        return Build(panel, CutCellBuilder.Build(panel.Region, panel.CellSize, gridOrigin, cancellation), cancellation);
    }

    /// <summary>Builds the problem of a panel on given cells.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Cells of its region.</param>
    /// <param name="cancellation">Stops the work between its steps.</param>
    internal static FillProblem Build(Panel panel, CutCellGrid cells, CancellationToken cancellation = default)
    {
        cancellation.ThrowIfCancellationRequested();
        PanelLayers stack = PanelLayers.Of(panel);
        IReadOnlyList<LayerSheet> sheets = SheetBuilder.Of(panel, stack, cells, cancellation);
        cancellation.ThrowIfCancellationRequested();
        FeedNetwork network = FeedNetwork.Plan(panel, cells, new ClothMap(panel.Zones), sheets.Count * cells.Grid.CellCount);
        LinePlan lines = LinePlan.Lay(panel, cells, sheets, network, cancellation);
        LatticeOperator conductances = StackedOperator.Of(sheets, cells, network.Nodes.Count);
        network.Write(conductances);
        bool[] passesResin = [.. panel.Vents.Select(vent => vent.Kind == VentKind.Tube)];
        foreach (LineContact line in lines.Feeds.Concat(lines.Gaps)) Join(line, conductances);
        for (int k = 0; k < passesResin.Length; k++)
        {
            if (passesResin[k]) Join(lines.Vents[k], conductances);
        }

        return new()
        {
            Panel = panel,
            Cells = cells,
            Operator = conductances,
            PoreVolume = [.. sheets.SelectMany(static sheet => sheet.PoreVolume), .. network.Nodes.Select(static node => node.Volume)],
            Stack = stack,
            BagSide = SideNodes.OfBagSide(sheets, cells),
            ToolSide = SideNodes.OfToolSide(sheets, cells),
            Network = network,
            Gaps = lines.Gaps,
            Feeds = lines.Feeds,
            FeedPressures = [.. panel.Feeds.Select(_ => 1.0)],
            Vents = lines.Vents,
            VentPassesResin = passesResin,
        };
    }

    /// <summary>Writes the conductances between a line and the cloth.</summary>
    /// <param name="line">Contacts of the line.</param>
    /// <param name="conductances">The operator.</param>
    internal static void Join(LineContact line, LatticeOperator conductances)
    {
        foreach (CellContact contact in line.Contacts)
        {
            if (contact.LineNode < 0) conductances.Anchor[contact.Cell] += contact.Conductance;
            else conductances.Link(contact.Cell, contact.LineNode, contact.Conductance);
        }
    }
}

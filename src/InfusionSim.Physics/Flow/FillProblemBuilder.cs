using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Lines;
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
    /// <exception cref="NotSupportedException">When a zone's axes lie neither along x nor along y, or two cores lie at different shares of the thickness.</exception>
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
        LinePlan lines = LinePlan.Lay(panel, cells, sheets, cancellation);
        LatticeOperator conductances = StackedOperator.Of(sheets, cells);
        bool[] passesResin = [.. panel.Vents.Select(vent => vent.Kind == VentKind.Tube)];
        foreach (LineContact feed in lines.Feeds) Anchor(feed, conductances);
        for (int k = 0; k < passesResin.Length; k++)
        {
            if (passesResin[k]) Anchor(lines.Vents[k], conductances);
        }

        return new()
        {
            Panel = panel,
            Cells = cells,
            Operator = conductances,
            PoreVolume = [.. sheets.SelectMany(static sheet => sheet.PoreVolume)],
            Stack = stack,
            BagSide = SideNodes.OfBagSide(sheets, cells),
            ToolSide = SideNodes.OfToolSide(sheets, cells),
            Feeds = lines.Feeds,
            FeedPressures = [.. panel.Feeds.Select(_ => 1.0)],
            Vents = lines.Vents,
            VentPassesResin = passesResin,
        };
    }

    private static void Anchor(LineContact line, LatticeOperator conductances)
    {
        foreach (CellContact contact in line.Contacts) conductances.Anchor[contact.Cell] += contact.Conductance;
    }
}

using InfusionSim.Numerics.Grids;

namespace InfusionSim.Physics.Layers;

/// <summary>Which node of each cell lies under the bag, and which on the mould.</summary>
internal static class SideNodes
{
    /// <summary>Node in the uppermost layer that covers at least half of each cell [-]; −1 without cloth. [rows × columns], x fastest.</summary>
    /// <param name="sheets">The layers, lowest first.</param>
    /// <param name="cells">Cells of the panel.</param>
    public static int[] OfBagSide(IReadOnlyList<LayerSheet> sheets, CutCellGrid cells) =>
        NodesOf([.. sheets.Reverse()], cells, static (sheet, cells, cell) => sheet.Cover.Area[cell] >= cells.Area[cell] / 2);

    /// <summary>Node in the lowest layer of laminate of each cell [-]; −1 without cloth. [rows × columns], x fastest.</summary>
    /// <param name="sheets">The layers, lowest first.</param>
    /// <param name="cells">Cells of the panel.</param>
    public static int[] OfToolSide(IReadOnlyList<LayerSheet> sheets, CutCellGrid cells) =>
        NodesOf([.. sheets.Where(static sheet => sheet.Layer.Kind == LayerKind.Laminate)], cells, static (_, _, _) => true);

    private static int[] NodesOf(LayerSheet[] inOrder, CutCellGrid cells, Func<LayerSheet, CutCellGrid, int, bool> counts)
    {
        int[] nodes = new int[cells.Grid.CellCount];
        for (int cell = 0; cell < nodes.Length; cell++)
        {
            LayerSheet? sheet = cells.HasCloth(cell) ? Array.Find(inOrder, sheet => counts(sheet, cells, cell)) : null;
            nodes[cell] = sheet is null ? -1 : sheet.FirstNode + cell;
        }

        return nodes;
    }
}

using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Layers;

/// <summary>Lays the conductances of the layers on one another and joins each cell to the one above it.</summary>
/// <remarks>
/// From the middle of one layer's thickness to that of the next the two half ways lie in series: area / (t₁/(2K₃₁) + t₂/(2K₃₂)) over the area that both
/// cover. Where a core leaves off, the skins touch: the film in its place has no thickness, so the way from it is the half way through the skin alone,
/// and two of them in series make the way from skin to skin.
/// </remarks>
internal static class StackedOperator
{
    /// <summary>Makes the operator.</summary>
    /// <param name="sheets">The layers, lowest first.</param>
    /// <param name="cells">Cells of the panel.</param>
    /// <param name="lineNodes">Nodes that lie in no layer [-].</param>
    public static LatticeOperator Of(IReadOnlyList<LayerSheet> sheets, CutCellGrid cells, int lineNodes = 0)
    {
        if (sheets.Count == 1 && lineNodes == 0) return sheets[0].Conductances;
        LatticeOperator stacked = new(cells.Grid.Columns, cells.Grid.Rows, sheets.Count, lineNodes);
        foreach (LayerSheet sheet in sheets)
        {
            foreach (StencilWay way in sheet.Conductances.Ways)
                Array.Copy(way.Conductance, 0, stacked.Way(way.Right, way.Up).Conductance, sheet.FirstNode, way.Conductance.Length);
        }

        for (int layer = 0; layer + 1 < sheets.Count; layer++)
        {
            for (int cell = 0; cell < cells.Grid.CellCount; cell++)
                stacked.Above[sheets[layer].FirstNode + cell] = Between(sheets[layer], sheets[layer + 1], cell, cells.Area[cell]);
        }

        return stacked;
    }

    private static double Between(LayerSheet lower, LayerSheet upper, int cell, double area)
    {
        double lowerArea = lower.Cover.Area[cell], upperArea = upper.Cover.Area[cell], both = Math.Min(lowerArea, upperArea);
        double lowerHalf = lower.Cover.HalfWay[cell], upperHalf = upper.Cover.HalfWay[cell];
        double sum = both > 0 ? both / (1 / lowerHalf + 1 / upperHalf) : 0;
        if (upper.Layer.Kind == LayerKind.Core) sum += (area - upperArea) * lowerHalf;
        if (lower.Layer.Kind == LayerKind.Core) sum += (area - lowerArea) * upperHalf;
        return sum;
    }
}

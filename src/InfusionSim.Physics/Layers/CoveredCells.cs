using InfusionSim.Numerics.Grids;

namespace InfusionSim.Physics.Layers;

/// <summary>The cells of a panel seen by a layer that covers only some of them.</summary>
internal static class CoveredCells
{
    /// <summary>The cells with cloth only where a layer lies; the panel's own when it covers them all.</summary>
    /// <param name="cells">Cells of the panel.</param>
    /// <param name="covered">Area of each that the layer covers [m²]. [rows × columns], x fastest.</param>
    public static CutCellGrid Of(CutCellGrid cells, double[] covered)
    {
        int count = cells.Grid.CellCount, columns = cells.Grid.Columns;
        if (Enumerable.Range(0, count).All(cell => covered[cell] > 0 || !cells.HasCloth(cell))) return cells;
        double[] area = new double[count], east = new double[count], north = new double[count];
        for (int cell = 0; cell < count; cell++)
        {
            if (!(covered[cell] > 0)) continue;
            area[cell] = cells.Area[cell];
            if (cells.EastAperture[cell] > 0 && covered[cell + 1] > 0) east[cell] = cells.EastAperture[cell];
            if (cells.NorthAperture[cell] > 0 && covered[cell + columns] > 0) north[cell] = cells.NorthAperture[cell];
        }

        return new()
        {
            Grid = cells.Grid,
            Region = cells.Region,
            Area = area,
            CentroidX = cells.CentroidX,
            CentroidY = cells.CentroidY,
            EastAperture = east,
            NorthAperture = north,
            EastMiddleY = cells.EastMiddleY,
            NorthMiddleX = cells.NorthMiddleX,
            EdgePieces = [.. cells.EdgePieces.Where(piece => piece.Cell >= 0 && covered[piece.Cell] > 0)],
            OwnerOf = cells.OwnerOf,
            CutParts = cells.CutParts,
            LostPassages = cells.LostPassages,
        };
    }
}

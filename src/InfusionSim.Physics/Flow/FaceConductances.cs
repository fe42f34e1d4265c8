using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Flow;

/// <summary>Conductances between neighbouring cells: resistance in series along the way from middle to middle, ways beside each other in parallel.</summary>
/// <remarks>
/// In one zone K·thickness·aperture/distance; across an edge of a zone that lies on the face the harmonic mean over the
/// two half ways, without which layers in series come out wrong at any cell size. An edge inside a cell is met by several
/// parallel ways through the open part of the face.
/// </remarks>
internal static class FaceConductances
{
    private const int Ways = 4;

    // Middles of cells that own slivers can come close together along an axis.
    private const double LeastDistanceInCells = 0.05;

    /// <summary>Writes the conductances within one layer.</summary>
    /// <param name="cells">The cells of the panel, the same in all layers.</param>
    /// <param name="cloth">The zones of this layer.</param>
    /// <param name="zones">Squares that lie in one of them alone.</param>
    /// <param name="target">Where to write them.</param>
    /// <param name="layer">The layer, counted from the lowest.</param>
    /// <param name="cancellation">Stops the work between rows.</param>
    public static void Write(CutCellGrid cells, ClothMap cloth, CellZones zones, LatticeOperator target, int layer = 0, CancellationToken cancellation = default)
    {
        RefuseTurned(cloth);
        UniformGrid grid = cells.Grid;
        int first = layer * target.CellsInLayer;
        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            if (grid.ColumnOf(cell) == 0) cancellation.ThrowIfCancellationRequested();
            if (!cells.HasCloth(cell)) continue;
            double open = cells.EastAperture[cell];
            if (open > 0) target.East[first + cell] = EastOf(cells, cloth, zones, cell, open);
            open = cells.NorthAperture[cell];
            if (open > 0) target.North[first + cell] = NorthOf(cells, cloth, zones, cell, open);
        }
    }

    private static void RefuseTurned(ClothMap cloth)
    {
        for (int zone = 0; zone < cloth.Zones.Count; zone++)
        {
            if (cloth[zone].IsAligned) continue;
            double degrees = cloth.Zones[zone].Permeability.Angle * 180 / Math.PI;
            throw new NotSupportedException($"Zone '{cloth.Zones[zone].Name}' is turned by {degrees:0.##}°; only 0, 90, 180 and 270° are computed so far.");
        }
    }

    private static double EastOf(CutCellGrid cells, ClothMap cloth, CellZones zones, int cell, double open)
    {
        int next = cell + 1;
        double from = cells.CentroidX[cell], to = Beyond(from, cells.CentroidX[next], cells.Grid.CellSize);
        int zone = OnlyZone(zones, cell, next);
        if (zone >= 0) return cloth[zone].Xx * open / (to - from);
        if (zone == CellZones.Bare) return 0;
        double sum = 0, low = cells.EastMiddleY[cell] - open / 2;
        for (int way = 0; way < Ways; way++)
        {
            double y = low + (way + 0.5) * open / Ways;
            sum += open / Ways / cloth.Resistance(new Point2(from, y), new Point2(to, y));
        }

        return sum;
    }

    private static double NorthOf(CutCellGrid cells, ClothMap cloth, CellZones zones, int cell, double open)
    {
        int next = cell + cells.Grid.Columns;
        double from = cells.CentroidY[cell], to = Beyond(from, cells.CentroidY[next], cells.Grid.CellSize);
        int zone = OnlyZone(zones, cell, next);
        if (zone >= 0) return cloth[zone].Yy * open / (to - from);
        if (zone == CellZones.Bare) return 0;
        double sum = 0, low = cells.NorthMiddleX[cell] - open / 2;
        for (int way = 0; way < Ways; way++)
        {
            double x = low + (way + 0.5) * open / Ways;
            sum += open / Ways / cloth.Resistance(new Point2(x, from), new Point2(x, to));
        }

        return sum;
    }

    private static double Beyond(double from, double to, double cellSize) => Math.Max(to, from + LeastDistanceInCells * cellSize);

    private static int OnlyZone(CellZones zones, int cell, int next)
    {
        int zone = zones.OnlyZoneOf(cell);
        return zone == zones.OnlyZoneOf(next) ? zone : -1;
    }
}

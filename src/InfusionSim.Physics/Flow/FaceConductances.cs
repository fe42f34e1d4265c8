using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Flow;

/// <summary>Conductances between neighbouring cells: resistance in series along the way from middle to middle, ways beside each other in parallel.</summary>
/// <remarks>
/// In one zone weight·aperture/distance, the weight being K·thickness where the axes of the zone lie along x and y; across an edge of
/// a zone that lies on the face the harmonic mean over the two half ways, without which layers in series come out wrong at any cell
/// size. An edge inside a cell is met by several parallel ways through the open part of the face. What else a turned cloth conducts
/// runs along <see cref="SlantedWays"/>.
/// </remarks>
internal static class FaceConductances
{
    private const int Ways = 4;

    // Middles of cells that own slivers can come close together along an axis.
    private const double LeastDistanceInCells = 0.05;

    /// <summary>Writes the conductances within one layer.</summary>
    /// <param name="cells">The cells of the layer.</param>
    /// <param name="cloth">Its zones.</param>
    /// <param name="zones">Squares that lie in one of them alone.</param>
    /// <param name="target">Where to write them.</param>
    /// <param name="layer">The layer, counted from the lowest.</param>
    /// <param name="cancellation">Stops the work between rows.</param>
    public static void Write(CutCellGrid cells, ClothMap cloth, CellZones zones, LatticeOperator target, int layer = 0, CancellationToken cancellation = default)
    {
        UniformGrid grid = cells.Grid;
        int first = layer * target.CellsInLayer;
        double[] east = [.. Enumerable.Range(0, cloth.Zones.Count).Select(zone => cloth.WeightIn(zone, 1, 0))];
        double[] north = [.. Enumerable.Range(0, cloth.Zones.Count).Select(zone => cloth.WeightIn(zone, 0, 1))];
        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            if (grid.ColumnOf(cell) == 0) cancellation.ThrowIfCancellationRequested();
            if (!cells.HasCloth(cell)) continue;
            double open = cells.EastAperture[cell];
            if (open > 0) target.East[first + cell] = EastOf(cells, cloth, OnlyZone(zones, cell, cell + 1), east, cell, open);
            open = cells.NorthAperture[cell];
            if (open > 0) target.North[first + cell] = NorthOf(cells, cloth, OnlyZone(zones, cell, cell + grid.Columns), north, cell, open);
        }

        SlantedWays.Write(cells, cloth, zones, target, layer, cancellation);
    }

    private static double EastOf(CutCellGrid cells, ClothMap cloth, int zone, double[] weights, int cell, double open)
    {
        double from = cells.CentroidX[cell], to = Beyond(from, cells.CentroidX[cell + 1], cells.Grid.CellSize);
        if (zone >= 0) return weights[zone] * open / (to - from);
        if (zone == CellZones.Bare) return 0;
        double sum = 0, low = cells.EastMiddleY[cell] - open / 2;
        for (int way = 0; way < Ways; way++)
        {
            double y = low + (way + 0.5) * open / Ways;
            sum += open / Ways * cloth.WeightAlong(new Point2(from, y), new Point2(to, y), 1, 0) / (to - from);
        }

        return sum;
    }

    private static double NorthOf(CutCellGrid cells, ClothMap cloth, int zone, double[] weights, int cell, double open)
    {
        double from = cells.CentroidY[cell], to = Beyond(from, cells.CentroidY[cell + cells.Grid.Columns], cells.Grid.CellSize);
        if (zone >= 0) return weights[zone] * open / (to - from);
        if (zone == CellZones.Bare) return 0;
        double sum = 0, low = cells.NorthMiddleX[cell] - open / 2;
        for (int way = 0; way < Ways; way++)
        {
            double x = low + (way + 0.5) * open / Ways;
            sum += open / Ways * cloth.WeightAlong(new Point2(x, from), new Point2(x, to), 0, 1) / (to - from);
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

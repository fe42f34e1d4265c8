using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids.Cutting;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;

namespace InfusionSim.Numerics.Grids;

/// <summary>How much of each cell lies in a zone.</summary>
public static class ZoneCover
{
    /// <summary>Area of what each cell owns that lies inside a ring [m²]; [rows × columns], x fastest.</summary>
    /// <param name="zone">The ring, without crossings; it may reach beyond the region and the grid.</param>
    /// <param name="cells">The cut cells.</param>
    public static double[] AreaInside(Ring zone, CutCellGrid cells)
    {
        ArgumentNullException.ThrowIfNull(zone);
        ArgumentNullException.ThrowIfNull(cells);
        UniformGrid grid = cells.Grid;
        var covered = new double[grid.CellCount];
        ILookup<int, CellPart> partsOf = cells.CutParts.ToLookup(p => p.Square);
        foreach (Region piece in OnGrid(zone, grid)) AddPiece(covered, new CutSquares(piece, grid), cells, partsOf);
        return covered;
    }

    private static void AddPiece(double[] covered, CutSquares zone, CutCellGrid cells, ILookup<int, CellPart> partsOf)
    {
        var frame = new GridFrame(cells.Grid);
        double square = cells.Grid.CellSize * cells.Grid.CellSize;
        for (int cell = 0; cell < covered.Length; cell++)
        {
            if (!zone.IsWhole(cell) || cells.OwnerOf[cell] < 0) continue;
            if (!partsOf.Contains(cell)) covered[cell] += square;
            else foreach (CellPart part in partsOf[cell]) covered[part.Owner] += part.Area;
        }

        foreach (SquarePart share in zone.Parts)
        {
            int cell = share.Square;
            if (cells.OwnerOf[cell] < 0) continue;
            if (!partsOf.Contains(cell))
            {
                covered[cell] += share.Area * square;
                continue;
            }

            Polygon shape = RegionShapes.ToPolygon(ToRing(share.Outer, frame), share.Holes.ConvertAll(h => ToRing(h, frame)));
            foreach (CellPart part in partsOf[cell])
            {
                Polygon own = RegionShapes.ToPolygon(part.Border, part.Holes);
                covered[part.Owner] += OverlayNGRobust.Overlay(own, shape, NetTopologySuite.Operation.Overlay.SpatialFunction.Intersection).Area;
            }
        }
    }

    private static Ring ToRing(List<GridPoint> corners, GridFrame frame) => new(corners.ConvertAll(frame.ToPlace));

    private static List<Region> OnGrid(Ring zone, UniformGrid grid)
    {
        Point2 low = grid.Origin, high = new(low.X + grid.Columns * grid.CellSize, low.Y + grid.Rows * grid.CellSize);
        if (zone.Corners.All(c => c.X >= low.X && c.X <= high.X && c.Y >= low.Y && c.Y <= high.Y)) return [new Region(zone, [])];
        NetTopologySuite.Geometries.Geometry common = OverlayNGRobust.Overlay(
            RegionShapes.ToPolygon(zone, []), RegionShapes.Rectangle(low, high), NetTopologySuite.Operation.Overlay.SpatialFunction.Intersection);
        var pieces = new List<Region>();
        for (int k = 0; k < common.NumGeometries; k++)
        {
            if (common.GetGeometryN(k) is Polygon { IsEmpty: false } polygon) pieces.Add(RegionShapes.ToRegion(polygon));
        }

        return pieces;
    }
}

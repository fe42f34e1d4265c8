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
        var covered = new double[cells.Grid.CellCount];
        AddInside(covered, zone, 1, cells, PartsOf(cells), SquareWindow.All, CancellationToken.None);
        return covered;
    }

    /// <summary>Parts of the cut squares by their square, for <see cref="AddInside"/>.</summary>
    /// <param name="cells">The cut cells.</param>
    internal static ILookup<int, CellPart> PartsOf(CutCellGrid cells) => cells.CutParts.ToLookup(p => p.Square);

    /// <summary>Adds the area of what each cell owns that lies inside a ring.</summary>
    /// <param name="covered">Where to add it [m²]; [rows × columns], x fastest.</param>
    /// <param name="zone">The ring, without crossings; it may reach beyond the region and the grid.</param>
    /// <param name="sign">1, or −1 to take it off [-].</param>
    /// <param name="cells">The cut cells.</param>
    /// <param name="partsOf">Their parts by square.</param>
    /// <param name="window">Squares that count.</param>
    /// <param name="cancellation">Stops the work between squares.</param>
    internal static void AddInside(double[] covered, Ring zone, int sign, CutCellGrid cells, ILookup<int, CellPart> partsOf, SquareWindow window, CancellationToken cancellation)
    {
        double[] inside = new double[covered.Length];
        foreach (Region piece in OnGrid(zone, cells.Grid))
        {
            cancellation.ThrowIfCancellationRequested();
            AddPiece(inside, new CutSquares(piece, cells.Grid), cells, partsOf, window, cancellation);
        }

        for (int cell = 0; cell < covered.Length; cell++) covered[cell] += sign * inside[cell];
    }

    private static void AddPiece(double[] covered, CutSquares zone, CutCellGrid cells, ILookup<int, CellPart> partsOf, SquareWindow window, CancellationToken cancellation)
    {
        UniformGrid grid = cells.Grid;
        var frame = new GridFrame(grid);
        double square = grid.CellSize * grid.CellSize;
        for (int row = Math.Max(0, window.LowRow); row <= Math.Min(grid.Rows - 1, window.HighRow); row++)
        {
            for (int column = Math.Max(0, window.LowColumn); column <= Math.Min(grid.Columns - 1, window.HighColumn); column++)
            {
                int cell = grid.IndexOf(column, row);
                if (!zone.IsWhole(cell) || cells.OwnerOf[cell] < 0) continue;
                if (!partsOf.Contains(cell)) covered[cell] += square;
                else foreach (CellPart part in partsOf[cell]) covered[part.Owner] += part.Area;
            }
        }

        foreach (SquarePart share in zone.Parts)
        {
            int cell = share.Square;
            if (cells.OwnerOf[cell] < 0 || !window.Contains(grid.ColumnOf(cell), grid.RowOf(cell))) continue;
            cancellation.ThrowIfCancellationRequested();
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

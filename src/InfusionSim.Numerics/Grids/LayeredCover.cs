using InfusionSim.Numerics.Geometry;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;
using SpatialFunction = NetTopologySuite.Operation.Overlay.SpatialFunction;

namespace InfusionSim.Numerics.Grids;

/// <summary>How much of each cell is seen of each of several sheets laid on one another.</summary>
public static class LayeredCover
{
    /// <summary>Area of what each cell owns where a sheet is the uppermost [m²]; one array per sheet, each [rows × columns], x fastest.</summary>
    /// <remarks>Seen of a sheet = cover of it and all above it, less the cover of those above it.</remarks>
    /// <param name="sheets">The sheets from the lowest to the uppermost; null stands for a sheet over everything.</param>
    /// <param name="cells">The cut cells.</param>
    public static IReadOnlyList<double[]> AreasSeen(IReadOnlyList<Ring?> sheets, CutCellGrid cells)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(cells);
        double[][] seen = new double[sheets.Count][];
        NetTopologySuite.Geometries.Geometry above = GeometryFactory.Default.CreatePolygon();
        double[] coverAbove = new double[cells.Grid.CellCount];
        bool allCovered = false;
        for (int sheet = sheets.Count - 1; sheet >= 0; sheet--)
        {
            double[] cover = cells.Area;
            if (!allCovered && sheets[sheet] is Ring ring)
            {
                above = OverlayNGRobust.Overlay(above, RegionShapes.ToPolygon(ring, []), SpatialFunction.Union);
                cover = CoverOf(above, cells);
            }

            allCovered |= sheets[sheet] is null;
            seen[sheet] = new double[cover.Length];
            for (int cell = 0; cell < cover.Length; cell++) seen[sheet][cell] = Math.Max(0, cover[cell] - coverAbove[cell]);
            coverAbove = cover;
        }

        return seen;
    }

    private static double[] CoverOf(NetTopologySuite.Geometries.Geometry shape, CutCellGrid cells)
    {
        double[] cover = new double[cells.Grid.CellCount];
        for (int k = 0; k < shape.NumGeometries; k++)
        {
            if (shape.GetGeometryN(k) is not Polygon { IsEmpty: false } polygon) continue;
            Region part = RegionShapes.ToRegion(polygon);
            Add(cover, part.Outline, 1, cells);
            foreach (Ring hole in part.Cutouts) Add(cover, hole, -1, cells);
        }

        return cover;
    }

    private static void Add(double[] cover, Ring ring, int sign, CutCellGrid cells)
    {
        double[] inside = ZoneCover.AreaInside(ring, cells);
        for (int cell = 0; cell < cover.Length; cell++) cover[cell] += sign * inside[cell];
    }
}

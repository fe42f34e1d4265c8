using InfusionSim.Numerics.Geometry;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;
using SpatialFunction = NetTopologySuite.Operation.Overlay.SpatialFunction;

namespace InfusionSim.Numerics.Grids;

/// <summary>How much of each cell is seen of each of several sheets laid on one another.</summary>
public static class LayeredCover
{
    /// <summary>Area of what each cell owns where a sheet is the uppermost [m²]; one array per sheet, each [rows × columns], x fastest.</summary>
    /// <remarks>
    /// Seen of a sheet = cover of it and all above it, less the cover of those above it; both are measured only in the squares the sheet can touch.
    /// </remarks>
    /// <param name="sheets">The sheets from the lowest to the uppermost; null stands for a sheet over everything.</param>
    /// <param name="cells">The cut cells.</param>
    /// <param name="cancellation">Stops the work between squares.</param>
    public static IReadOnlyList<double[]> AreasSeen(IReadOnlyList<Ring?> sheets, CutCellGrid cells, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        ArgumentNullException.ThrowIfNull(cells);
        double[][] seen = new double[sheets.Count][];
        NetTopologySuite.Geometries.Geometry above = GeometryFactory.Default.CreatePolygon();
        ILookup<int, CellPart> partsOf = ZoneCover.PartsOf(cells);
        bool allCovered = false;
        for (int sheet = sheets.Count - 1; sheet >= 0; sheet--)
        {
            cancellation.ThrowIfCancellationRequested();
            seen[sheet] = new double[cells.Grid.CellCount];
            if (allCovered) continue;
            double[] cover = cells.Area, coverAbove;
            if (sheets[sheet] is Ring ring)
            {
                SquareWindow window = SquareWindow.Round(ring, cells.Grid);
                coverAbove = CoverOf(above, window);
                above = OverlayNGRobust.Overlay(above, RegionShapes.ToPolygon(ring, []), SpatialFunction.Union);
                cover = CoverOf(above, window);
            }
            else
            {
                coverAbove = CoverOf(above, SquareWindow.All);
                allCovered = true;
            }

            for (int cell = 0; cell < cover.Length; cell++) seen[sheet][cell] = Math.Max(0, cover[cell] - coverAbove[cell]);
        }

        return seen;

        double[] CoverOf(NetTopologySuite.Geometries.Geometry shape, SquareWindow window)
        {
            double[] cover = new double[cells.Grid.CellCount];
            for (int k = 0; k < shape.NumGeometries; k++)
            {
                if (shape.GetGeometryN(k) is not Polygon { IsEmpty: false } polygon) continue;
                Region part = RegionShapes.ToRegion(polygon);
                Add(cover, part.Outline, 1, window);
                foreach (Ring hole in part.Cutouts) Add(cover, hole, -1, window);
            }

            return cover;
        }

        void Add(double[] cover, Ring ring, int sign, SquareWindow window)
        {
            cancellation.ThrowIfCancellationRequested();
            if (window.Meets(SquareWindow.Round(ring, cells.Grid))) ZoneCover.AddInside(cover, ring, sign, cells, partsOf, window, cancellation);
        }
    }
}

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>Finds where straight ways meet the outline or a cut-out; knows in which squares to look.</summary>
public sealed class EdgeFinder
{
    // An edge along a grid line belongs to the squares on both sides of it.
    private const double Margin = 1e-6;

    // Sides are differences of products: what is smaller than this share of them counts as on the line, and touching counts as meeting.
    private const double OnLine = 1e-12;

    // Edges that a way meets at shares no farther apart than this, it meets in their common corner.
    private const double SamePlace = 1e-9;

    private readonly UniformGrid grid;
    private readonly List<(Point2 Start, Point2 End)>?[] edgesIn;

    /// <summary>Sorts the edges of a region into its squares.</summary>
    /// <param name="cells">The cut cells.</param>
    public EdgeFinder(CutCellGrid cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        grid = cells.Grid;
        edgesIn = new List<(Point2, Point2)>?[grid.CellCount];
        foreach (Ring ring in cells.Region.Cutouts.Prepend(cells.Region.Outline))
        {
            Point2 a = ring.Corners[^1];
            foreach (Point2 b in ring.Corners)
            {
                foreach (int square in SquaresBeside.Of(grid, a, b, Margin)) (edgesIn[square] ??= []).Add((a, b));
                a = b;
            }
        }
    }

    /// <summary>Whether an edge passes through a square or along its border.</summary>
    /// <param name="square">Index of the square.</param>
    public bool HasEdge(int square) => edgesIn[square] is not null;

    /// <summary>Whether a way meets an edge, if only in a corner.</summary>
    /// <param name="from">Where the way begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    public bool Meets(Point2 from, Point2 to)
    {
        foreach ((Point2 start, Point2 end) in EdgesNear(from, to))
        {
            if (ShareAt(from, to, start, end) is not null) return true;
        }

        return false;
    }

    /// <summary>Where a way first meets an edge: empty when it meets none inside the grid, one for each edge when it meets a corner.</summary>
    /// <param name="from">Where the way begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    public IReadOnlyList<EdgeHit> First(Point2 from, Point2 to)
    {
        List<EdgeHit> hits = [];
        foreach ((Point2 start, Point2 end) in EdgesNear(from, to))
        {
            if (ShareAt(from, to, start, end) is double share) hits.Add(new(share, start, end));
        }

        if (hits.Count < 2) return hits;
        double first = hits.Min(hit => hit.Share) + SamePlace;
        return [.. hits.Where(hit => hit.Share <= first).DistinctBy(hit => (hit.Start, hit.End))];
    }

    private IEnumerable<(Point2 Start, Point2 End)> EdgesNear(Point2 from, Point2 to)
    {
        int lowColumn = Index(Math.Min(from.X, to.X) - grid.Origin.X, grid.Columns), highColumn = Index(Math.Max(from.X, to.X) - grid.Origin.X, grid.Columns);
        int lowRow = Index(Math.Min(from.Y, to.Y) - grid.Origin.Y, grid.Rows), highRow = Index(Math.Max(from.Y, to.Y) - grid.Origin.Y, grid.Rows);
        for (int row = lowRow; row <= highRow; row++)
        {
            for (int column = lowColumn; column <= highColumn; column++)
            {
                if (edgesIn[grid.IndexOf(column, row)] is not { } edges) continue;
                foreach ((Point2, Point2) edge in edges) yield return edge;
            }
        }
    }

    private int Index(double offset, int count) => Math.Clamp((int)Math.Floor(offset / grid.CellSize), 0, count - 1);

    private static double? ShareAt(Point2 from, Point2 to, Point2 start, Point2 end)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y, ex = end.X - start.X, ey = end.Y - start.Y;
        double size = OnLine * (dx * dx + dy * dy + ex * ex + ey * ey);
        double startSide = dx * (start.Y - from.Y) - dy * (start.X - from.X), endSide = dx * (end.Y - from.Y) - dy * (end.X - from.X);
        if ((startSide > size && endSide > size) || (startSide < -size && endSide < -size)) return null;
        double fromSide = ex * (from.Y - start.Y) - ey * (from.X - start.X), toSide = ex * (to.Y - start.Y) - ey * (to.X - start.X);
        if ((fromSide > size && toSide > size) || (fromSide < -size && toSide < -size)) return null;
        return fromSide == toSide ? 0 : Math.Clamp(fromSide / (fromSide - toSide), 0, 1);
    }
}

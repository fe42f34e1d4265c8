using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Splits the rings of a region at the grid lines.</summary>
/// <remarks>
/// A crossing keeps the whole number of the line it lies on, and a crossing beside a corner of the grid is put on the corner, so
/// that everything after this step compares places exactly.
/// </remarks>
internal static class EdgeSplitter
{
    /// <summary>All pieces in the order of the rings; the outline runs anticlockwise, cut-outs clockwise.</summary>
    /// <param name="region">The region.</param>
    /// <param name="grid">Squares that cover it.</param>
    public static List<GridPiece> Split(Region region, UniformGrid grid)
    {
        var pieces = new List<GridPiece>();
        var frame = new GridFrame(grid);
        AddRing(pieces, region.Outline, 0, anticlockwise: true, grid, frame);
        for (int k = 0; k < region.Cutouts.Count; k++) AddRing(pieces, region.Cutouts[k], k + 1, anticlockwise: false, grid, frame);
        return pieces;
    }

    private static void AddRing(List<GridPiece> pieces, Ring ring, int ringIndex, bool anticlockwise, UniformGrid grid, GridFrame frame)
    {
        IReadOnlyList<Point2> corners = ring.Corners;
        int count = corners.Count;
        bool backwards = ring.SignedArea > 0 != anticlockwise;
        var stops = new List<(double Along, GridPoint At, Point2 Place)>();
        for (int k = 0; k < count; k++)
        {
            Point2 from = corners[backwards ? count - 1 - k : k];
            Point2 to = corners[backwards ? (2 * count - 2 - k) % count : (k + 1) % count];
            CollectStops(stops, from, to, frame);
            for (int s = 0; s + 1 < stops.Count; s++)
            {
                (_, GridPoint start, Point2 placeFrom) = stops[s];
                (_, GridPoint end, Point2 placeTo) = stops[s + 1];
                if (start != end) pieces.Add(MakePiece(start, end, placeFrom, placeTo, ringIndex, grid));
            }
        }
    }

    private static void CollectStops(List<(double Along, GridPoint At, Point2 Place)> stops, Point2 from, Point2 to, GridFrame frame)
    {
        stops.Clear();
        GridPoint start = frame.ToGridPoint(from), end = frame.ToGridPoint(to);
        double runU = end.U - start.U, runV = end.V - start.V;
        stops.Add((0, start, from));
        double lastU = Math.Ceiling(Math.Max(start.U, end.U)), lastV = Math.Ceiling(Math.Max(start.V, end.V));
        for (double line = Math.Floor(Math.Min(start.U, end.U)) + 1; line < lastU; line++)
        {
            double along = (line - start.U) / runU;
            AddStop(along, new GridPoint(line, frame.Snap(start.V + along * runV)));
        }

        for (double line = Math.Floor(Math.Min(start.V, end.V)) + 1; line < lastV; line++)
        {
            double along = (line - start.V) / runV;
            AddStop(along, new GridPoint(frame.Snap(start.U + along * runU), line));
        }

        stops.Add((1, end, to));
        stops.Sort(static (a, b) => a.Along.CompareTo(b.Along));

        void AddStop(double along, GridPoint at) => stops.Add((along, at, frame.ToPlace(at)));
    }

    private static GridPiece MakePiece(GridPoint start, GridPoint end, Point2 from, Point2 to, int ringIndex, UniformGrid grid)
    {
        double middleU = (start.U + end.U) / 2, middleV = (start.V + end.V) / 2;
        int column = (int)Math.Floor(middleU), row = (int)Math.Floor(middleV);
        bool upright = start.U == end.U && start.U == Math.Floor(start.U);
        bool level = start.V == end.V && start.V == Math.Floor(start.V);
        // Floor names the square to the right of or above a grid line; the region lies to the left of the direction of travel.
        if (upright && end.V > start.V) column--;
        if (level && end.U < start.U) row--;
        int square = grid.IndexOf(Math.Clamp(column, 0, grid.Columns - 1), Math.Clamp(row, 0, grid.Rows - 1));
        return new GridPiece(start, end, from, to, ringIndex, square, upright || level);
    }
}

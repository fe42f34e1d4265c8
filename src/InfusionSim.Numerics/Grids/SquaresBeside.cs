using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>The squares that a straight stretch passes through or close by.</summary>
public static class SquaresBeside
{
    // A stretch that climbs by less than this share of a square counts as level: dividing by its rise would lose all digits.
    private const double Level = 1e-9;

    /// <summary>Indexes of the squares, row by row.</summary>
    /// <param name="grid">The squares.</param>
    /// <param name="from">Where the stretch begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    /// <param name="margin">How far from a square it may pass and still count, in squares [-], above 0.</param>
    public static IEnumerable<int> Of(UniformGrid grid, Point2 from, Point2 to, double margin)
    {
        ArgumentNullException.ThrowIfNull(grid);
        double ax = (from.X - grid.Origin.X) / grid.CellSize, ay = (from.Y - grid.Origin.Y) / grid.CellSize;
        double bx = (to.X - grid.Origin.X) / grid.CellSize, by = (to.Y - grid.Origin.Y) / grid.CellSize;
        int lowRow = (int)Math.Clamp(Math.Floor(Math.Min(ay, by) - margin), 0, grid.Rows);
        int highRow = (int)Math.Clamp(Math.Floor(Math.Max(ay, by) + margin), -1, grid.Rows - 1);
        for (int row = lowRow; row <= highRow; row++)
        {
            double t0 = 0, t1 = 1;
            if (Math.Abs(by - ay) > Level)
            {
                double s0 = (row - margin - ay) / (by - ay), s1 = (row + 1 + margin - ay) / (by - ay);
                t0 = Math.Clamp(Math.Min(s0, s1), 0, 1);
                t1 = Math.Clamp(Math.Max(s0, s1), 0, 1);
            }

            double x0 = ax + t0 * (bx - ax), x1 = ax + t1 * (bx - ax);
            int lowColumn = (int)Math.Clamp(Math.Floor(Math.Min(x0, x1) - margin), 0, grid.Columns);
            int highColumn = (int)Math.Clamp(Math.Floor(Math.Max(x0, x1) + margin), -1, grid.Columns - 1);
            for (int column = lowColumn; column <= highColumn; column++) yield return grid.IndexOf(column, row);
        }
    }
}

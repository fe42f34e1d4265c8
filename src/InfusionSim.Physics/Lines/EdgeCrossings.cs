using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Lines;

/// <summary>Finds where a line inside the cloth crosses the ways between the middles of neighbouring cells.</summary>
/// <remarks>
/// The line is moved by a ten-millionth of a cell to the upper right. It then meets no middle and no other crossing of ways
/// exactly, so each crossing is plain and counted once, and no gap can open at a corner, along a row of middles or where two
/// stretches join. Where a crossing lies on its way is read from the line itself.
/// </remarks>
internal static class EdgeCrossings
{
    private const double ShiftX = 1.0e-7, ShiftY = 0.618e-7;

    /// <summary>Crossings of one straight stretch with the share of the way from the left or lower middle at which each lies [-].</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="cells">The cells.</param>
    /// <param name="conductances">Conductances between the cells; ways without any are left out.</param>
    public static IEnumerable<(LatticeEdge Edge, double Share)> Of(Segment stretch, CutCellGrid cells, LatticeOperator conductances)
    {
        UniformGrid grid = cells.Grid;
        Segment moved = Moved(stretch, grid.CellSize);
        foreach (int cell in CellsBeside(moved.From, moved.To, grid))
        {
            if (conductances.East[cell] > 0 && Crossing(cells.CentroidOf(cell), cells.CentroidOf(cell + 1), moved, stretch) is double east)
                yield return (new(cell, false), east);
            if (conductances.North[cell] > 0 && Crossing(cells.CentroidOf(cell), cells.CentroidOf(cell + grid.Columns), moved, stretch) is double north)
                yield return (new(cell, true), north);
        }
    }

    /// <summary>Where a stretch crosses the way from the middle of a cell to the middle of an edge it owns, as a share of the way [-]; null when it does not.</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="piece">The edge.</param>
    /// <param name="cells">The cells.</param>
    public static double? BeforeWall(Segment stretch, EdgePiece piece, CutCellGrid cells)
    {
        Point2 wall = new((piece.Start.X + piece.End.X) / 2, (piece.Start.Y + piece.End.Y) / 2);
        return Crossing(cells.CentroidOf(piece.Cell), wall, Moved(stretch, cells.Grid.CellSize), stretch);
    }

    private static Segment Moved(Segment stretch, double cellSize)
    {
        double x = ShiftX * cellSize, y = ShiftY * cellSize;
        return new(new(stretch.From.X + x, stretch.From.Y + y), new(stretch.To.X + x, stretch.To.Y + y));
    }

    // The middle of a cell that owns a sliver may lie in the square beside, hence two cells of margin.
    private static IEnumerable<int> CellsBeside(Point2 from, Point2 to, UniformGrid grid)
    {
        const double Margin = 2;
        double ax = (from.X - grid.Origin.X) / grid.CellSize, ay = (from.Y - grid.Origin.Y) / grid.CellSize;
        double bx = (to.X - grid.Origin.X) / grid.CellSize, by = (to.Y - grid.Origin.Y) / grid.CellSize;
        int lowRow = (int)Math.Clamp(Math.Floor(Math.Min(ay, by) - Margin), 0, grid.Rows);
        int highRow = (int)Math.Clamp(Math.Floor(Math.Max(ay, by) + Margin), -1, grid.Rows - 1);
        for (int row = lowRow; row <= highRow; row++)
        {
            double t0 = 0, t1 = 1;
            if (by != ay)
            {
                double s0 = (row - Margin - ay) / (by - ay), s1 = (row + 1 + Margin - ay) / (by - ay);
                t0 = Math.Clamp(Math.Min(s0, s1), 0, 1);
                t1 = Math.Clamp(Math.Max(s0, s1), 0, 1);
            }

            double x0 = ax + t0 * (bx - ax), x1 = ax + t1 * (bx - ax);
            int lowColumn = (int)Math.Clamp(Math.Floor(Math.Min(x0, x1) - Margin), 0, grid.Columns);
            int highColumn = (int)Math.Clamp(Math.Floor(Math.Max(x0, x1) + Margin), -1, grid.Columns - 1);
            for (int column = lowColumn; column <= highColumn; column++) yield return grid.IndexOf(column, row);
        }
    }

    // The moved line decides whether there is a crossing, the line itself where.
    private static double? Crossing(Point2 a, Point2 b, Segment moved, Segment line)
    {
        if ((Turn(moved.From, moved.To, a) > 0) == (Turn(moved.From, moved.To, b) > 0)) return null;
        if ((Turn(a, b, moved.From) > 0) == (Turn(a, b, moved.To) > 0)) return null;
        double sideA = Turn(line.From, line.To, a), sideB = Turn(line.From, line.To, b);
        return Math.Clamp(sideA / (sideA - sideB), 0, 1);
    }

    private static double Turn(Point2 a, Point2 b, Point2 c) => (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Lines;

/// <summary>Finds where a line inside the cloth crosses the ways between the middles of cells.</summary>
/// <remarks>
/// The line is moved by a ten-millionth of a cell to the upper right, farther along the longer side of the panel. It then meets
/// no middle and no other crossing of ways exactly, so each crossing is plain and counted once, and no gap can open at a corner,
/// along a row of middles or where two stretches join. Where a crossing lies on its way is read from the line itself.
/// </remarks>
internal static class EdgeCrossings
{
    private const double LongShift = 1.0e-7, ShortShift = 0.618e-7;

    // The middle of a cell that owns a sliver may lie in the square beside.
    private const double Margin = 1;

    /// <summary>Crossings of one straight stretch with the share of the way from the left or lower middle at which each lies [-].</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="cells">The cells.</param>
    /// <param name="conductances">Conductances between the cells; ways without any are left out.</param>
    public static IEnumerable<(LatticeEdge Edge, double Share)> Of(Segment stretch, CutCellGrid cells, LatticeOperator conductances)
    {
        Segment moved = Moved(stretch, cells);
        int reach = conductances.Ways.Max(way => Math.Max(Math.Abs(way.Right), way.Up));
        foreach (int cell in SquaresBeside.Of(cells.Grid, moved.From, moved.To, Margin + reach))
        {
            foreach (StencilWay way in conductances.Ways)
            {
                if (!(way.Conductance[cell] > 0)) continue;
                LatticeEdge edge = new(cell, way.Right, way.Up);
                if (Crossing(cells.CentroidOf(cell), cells.CentroidOf(edge.OtherCell(cells.Grid)), moved, stretch) is double share) yield return (edge, share);
            }
        }
    }

    /// <summary>Where a stretch crosses a way that ends on an edge of the cloth, as a share of the way [-]; null when it does not.</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="way">The way.</param>
    /// <param name="cells">The cells.</param>
    public static double? On(Segment stretch, Segment way, CutCellGrid cells) => Crossing(way.From, way.To, Moved(stretch, cells), stretch);

    /// <summary>
    /// Where a stretch crosses the way from the middle of a cell to the middle of an edge it owns, as a share of the way [-]; null when it does not.
    /// </summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="piece">The edge.</param>
    /// <param name="cells">The cells.</param>
    public static double? BeforeWall(Segment stretch, EdgePiece piece, CutCellGrid cells)
    {
        Point2 wall = new((piece.Start.X + piece.End.X) / 2, (piece.Start.Y + piece.End.Y) / 2);
        return Crossing(cells.CentroidOf(piece.Cell), wall, Moved(stretch, cells), stretch);
    }

    private static Segment Moved(Segment stretch, CutCellGrid cells)
    {
        double size = cells.Grid.CellSize, x = (cells.IsWide ? LongShift : ShortShift) * size, y = (cells.IsWide ? ShortShift : LongShift) * size;
        return new(new(stretch.From.X + x, stretch.From.Y + y), new(stretch.To.X + x, stretch.To.Y + y));
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

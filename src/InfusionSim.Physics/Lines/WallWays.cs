using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Lines;

/// <summary>Ways from the middles of cells straight to the edges of the cloth they own.</summary>
internal static class WallWays
{
    // Keeps a cell whose middle lies on its own edge from conducting without limit.
    private const double LeastDistanceInCells = 1e-3;

    /// <summary>Cells a line parts from an edge they own, with the conductance from the middle to the line [m³].</summary>
    /// <param name="stretches">Stretches of the line.</param>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    public static IEnumerable<(int Cell, double Conductance)> Crossed(IReadOnlyList<Segment> stretches, CutCellGrid cells, ClothMap cloth)
    {
        foreach (EdgePiece piece in cells.EdgePieces)
        {
            if (!(piece.Length > 0) || !cells.HasCloth(piece.Cell)) continue;
            double nearest = double.PositiveInfinity;
            foreach (Segment stretch in stretches)
            {
                if (EdgeCrossings.BeforeWall(stretch, piece, cells) is double share) nearest = Math.Min(nearest, share);
            }

            if (nearest <= 1 && Resistance(piece, cells, cloth) is double resistance && double.IsFinite(resistance))
                yield return (piece.Cell, piece.Length / resistance / Math.Max(nearest, LatticeEdge.LeastShare));
        }
    }

    /// <summary>
    /// Resistance of the way from the middle of a cell to an edge, per width [1/m²]; that of the ways along the squares alone, to which turned cloth
    /// adds its <see cref="WallExits"/>.
    /// </summary>
    /// <param name="piece">The edge.</param>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    public static double Resistance(EdgePiece piece, CutCellGrid cells, ClothMap cloth)
    {
        Point2 middle = cells.CentroidOf(piece.Cell);
        double length = piece.Length, nx = -(piece.End.Y - piece.Start.Y) / length, ny = (piece.End.X - piece.Start.X) / length;
        double distance = nx * (piece.Start.X - middle.X) + ny * (piece.Start.Y - middle.Y);
        double least = LeastDistanceInCells * cells.Grid.CellSize;
        if (Math.Abs(distance) < least) distance = Math.CopySign(least, distance);
        return cloth.ResistanceOfStraightArms(middle, new(middle.X + distance * nx, middle.Y + distance * ny));
    }
}

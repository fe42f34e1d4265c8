using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Flow;

/// <summary>Makes the ways of cut cells pass what they should beside an edge that runs askew to the squares.</summary>
/// <remarks>
/// The middles of two cells, one of them cut, lie askew to the direction of their way, so the difference of their pressures also holds
/// a part square to it. Beside a fed edge the pressure falls straight away from it, along its normal n; beside a sealed
/// edge it falls along the edge, square to K·n. For a pressure that falls evenly along such a direction g the way passes
/// the true flow when its conductance is multiplied by g_f d_f / (g · d), with d from middle to middle and f the way's
/// own direction. On edges along the squares the factor is 1. It stays between one half and two, which keeps all
/// conductances above 0. Derived; it takes the error of a disc fed round its rim from first to second order.
/// </remarks>
internal static class SlantedWalls
{
    private const double LargestFactor = 2;

    // Below it the edge counts as lying along the squares: rounding in its corners must not decide.
    private const double SmallestSine = 1e-3;

    /// <summary>Corrects the conductances beside the edges.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    /// <param name="fed">Whether a feed or an open vent lies along each edge piece, in the order of the cells' list.</param>
    /// <param name="conductances">Conductances between the cells.</param>
    /// <param name="layer">The layer whose zones these are, counted from the lowest.</param>
    public static void Correct(CutCellGrid cells, ClothMap cloth, IReadOnlyList<bool> fed, LatticeOperator conductances, int layer = 0)
    {
        int first = layer * conductances.CellsInLayer;
        Dictionary<int, Walls> walls = [];
        for (int k = 0; k < cells.EdgePieces.Count; k++)
        {
            EdgePiece piece = cells.EdgePieces[k];
            walls[piece.Cell] = walls.GetValueOrDefault(piece.Cell).With(piece, cells.CentroidOf(piece.Cell), fed[k]);
        }

        foreach (StencilWay way in conductances.Ways)
        {
            HashSet<int> done = [];
            foreach (int cell in walls.Keys)
            {
                Scale(way, cell, done);
                int column = cells.Grid.ColumnOf(cell) - way.Right, row = cells.Grid.RowOf(cell) - way.Up;
                if (column >= 0 && column < cells.Grid.Columns && row >= 0) Scale(way, cells.Grid.IndexOf(column, row), done);
            }
        }

        void Scale(StencilWay way, int cell, HashSet<int> done)
        {
            if (way.Conductance[first + cell] == 0 || !done.Add(cell)) return;
            int next = cell + way.Up * cells.Grid.Columns + way.Right;
            Walls own = walls.GetValueOrDefault(cell), others = walls.GetValueOrDefault(next);
            if (own.And(others).Direction(cloth, Between(cell, next, others.Length / (own.Length + others.Length))) is not Point2 fall) return;
            double x = cells.CentroidX[next] - cells.CentroidX[cell], y = cells.CentroidY[next] - cells.CentroidY[cell];
            double ahead = fall.X * way.Right + fall.Y * way.Up, along = fall.X * x + fall.Y * y;
            double square = way.Right * way.Right + way.Up * way.Up;
            if (Math.Abs(ahead) < SmallestSine) return;
            double factor = ahead * (way.Right * x + way.Up * y) / (along * square);
            if (factor > 0) way.Conductance[first + cell] *= Math.Clamp(factor, 1 / LargestFactor, LargestFactor);
        }

        // The middle of the cell that the edges belong to, or between two by the length of their edges.
        Point2 Between(int cell, int next, double share) =>
            new((1 - share) * cells.CentroidX[cell] + share * cells.CentroidX[next], (1 - share) * cells.CentroidY[cell] + share * cells.CentroidY[next]);
    }

    /// <summary>Edges of a cell added up: each as its inward normal times its length [m].</summary>
    private readonly record struct Walls(double FedX, double FedY, double SealedX, double SealedY, double Length)
    {
        public Walls With(EdgePiece piece, Point2 middle, bool fed)
        {
            double x = piece.Start.Y - piece.End.Y, y = piece.End.X - piece.Start.X;
            if (x * (middle.X - piece.Start.X) + y * (middle.Y - piece.Start.Y) < 0) (x, y) = (-x, -y);
            return And(fed ? new(x, y, 0, 0, piece.Length) : new(0, 0, x, y, piece.Length));
        }

        public Walls And(Walls other) =>
            new(FedX + other.FedX, FedY + other.FedY, SealedX + other.SealedX, SealedY + other.SealedY, Length + other.Length);

        // Null where no one direction stands out: between a fed and a sealed edge, or between two edges that face each other.
        public Point2? Direction(ClothMap cloth, Point2 middle)
        {
            double fed = Math.Sqrt(FedX * FedX + FedY * FedY), held = Math.Sqrt(SealedX * SealedX + SealedY * SealedY);
            if (Math.Max(fed, held) < Length / 2 || (fed > 0 && held > 0)) return null;
            if (fed > 0) return new(FedX / fed, FedY / fed);
            int zone = cloth.ZoneAt(middle);
            if (zone < 0 || !(cloth[zone].Xx > 0)) return new(-SealedY / held, SealedX / held);
            double cross = cloth[zone].Xy / cloth[zone].Xx;
            double x = -SealedY * (cloth[zone].Yy / cloth[zone].Xx) - SealedX * cross, y = SealedX + SealedY * cross, size = Math.Sqrt(x * x + y * y);
            return new(x / size, y / size);
        }
    }
}

using System.Runtime.Intrinsics;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Operator-dependent interpolation from a grid to the next finer one.</summary>
/// <remarks>
/// A cell between two coarse points takes the value that balances the couplings to their two sides, the couplings
/// along the middle collapsed onto the cell itself; a cell amid four takes the value that balances all eight.
/// Negative offers count as 0, and no weights add up to more than 1; where coarse grids have a negative coupling to the middle of a side, as beside
/// a narrow channel, the side counts at least as much as its firmer corner. A neighbour that takes no part holds
/// the value 0, so its coupling stays in the balance as a conductance to 0.
/// With layers the cells above one another are balanced together, every layer offered the same coarse value: where
/// they are strongly joined they share the weights of their sum, where they are not each has its own.
/// Source: Dendy, J. Comput. Phys. 48 (1982) 366 (from memory); the clamps and the balance of a column are our own.
/// </remarks>
internal static unsafe class Interpolation
{
    /// <summary>Computes the weights of all cells for the level's coarsening.</summary>
    /// <param name="level">The finer grid.</param>
    public static void Compute(MultigridLevel level)
    {
        ColumnBalance balance = new(level.Layout.Layers);
        Coarsening by = level.Coarsening;

        // Cells amid four coarse points use the weights of their neighbours in odd columns and in odd rows.
        for (int pass = 0; pass < 2; pass++)
        {
            for (int row = 0; row < level.Layout.Rows; row++)
            {
                for (int column = 0; column < level.Layout.Columns; column++)
                {
                    bool between = by.Columns == 2 && (column & 1) == 1, beside = by.Rows == 2 && (row & 1) == 1;
                    if ((between && beside) == (pass == 1)) ComputeColumn(level, column, row, between, beside, balance);
                }
            }
        }
    }

    private static void ComputeColumn(MultigridLevel level, int column, int row, bool between, bool beside, ColumnBalance balance)
    {
        for (int layer = 0; layer < level.Layout.Layers; layer++)
        {
            int at = level.Layout.At(column, row, layer);
            ref CellBalance here = ref balance.Cells[layer];
            here = default;
            here.TakesPart = level.Diagonal.Origin[at] > 0;
            here.Above = level.Above is null ? 0 : level.Above.Origin[at];
            if (!here.TakesPart) continue;
            Neighbourhood n = Neighbourhood.Of(level, at);
            if (between && beside) AmidFour(level, at, in n, ref here);
            else if (between) Offer(Side(n.West, n.SouthWest, n.NorthWest), Side(n.East, n.SouthEast, n.NorthEast), 0, n.ToZero, ref here);
            else if (beside) Offer(Side(n.South, n.SouthWest, n.SouthEast), 0, Side(n.North, n.NorthWest, n.NorthEast), n.ToZero, ref here);
            else here.Corners = Vector256.Create(1.0, 0, 0, 0);
        }

        if (between || beside) balance.Solve();
        for (int layer = 0; layer < level.Layout.Layers; layer++)
        {
            int at = level.Layout.At(column, row, layer);
            Vector256<double> corners = balance.Cells[layer].Corners;
            level.LowerLeft.Origin[at] = (float)corners[0];
            level.LowerRight.Origin[at] = (float)corners[1];
            level.UpperLeft.Origin[at] = (float)corners[2];
            level.UpperRight.Origin[at] = (float)corners[3];
            level.WeightSum.Origin[at] = (float)Vector256.Sum(corners);
        }
    }

    private static double Side(double middle, double corner, double otherCorner) => Math.Max(middle + corner + otherCorner, Math.Max(corner, otherCorner));

    private static void Offer(double lowerLeft, double lowerRight, double upperLeft, double toZero, ref CellBalance here)
    {
        here.Corners = Vector256.Max(Vector256.Create(lowerLeft, lowerRight, upperLeft, 0), Vector256<double>.Zero);
        here.Own = Vector256.Sum(here.Corners) + toZero;
    }

    private static void AmidFour(MultigridLevel level, int at, in Neighbourhood n, ref CellBalance here)
    {
        int stride = level.Layout.Stride;
        float* ll = level.LowerLeft.Origin, lr = level.LowerRight.Origin, ul = level.UpperLeft.Origin;

        // South and north neighbours lie between two coarse points of one row, west and east ones between two of one column.
        Vector256<double> offers = Vector256.Create(
            n.SouthWest + (double)n.South * ll[at - stride] + (double)n.West * ll[at - 1],
            n.SouthEast + (double)n.South * lr[at - stride] + (double)n.East * ll[at + 1],
            n.NorthWest + (double)n.North * ll[at + stride] + (double)n.West * ul[at - 1],
            n.NorthEast + (double)n.North * lr[at + stride] + (double)n.East * ul[at + 1]);
        here.Corners = Vector256.Max(offers, Vector256<double>.Zero);
        here.Own = Math.Max(n.Sum + n.ToZero, Vector256.Sum(here.Corners));
    }
}

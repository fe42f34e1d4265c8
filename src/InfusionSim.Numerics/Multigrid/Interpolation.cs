using System.Runtime.CompilerServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Operator-dependent interpolation from a grid to the next finer one.</summary>
/// <remarks>
/// A cell between two coarse points takes the value that balances the couplings to their two sides, the couplings
/// along the middle collapsed onto the cell itself; a cell amid four takes the value that balances all eight.
/// Negative collapsed couplings count as 0, and no weights add up to more than 1. A neighbour that takes no part holds
/// the value 0, so its coupling stays in the balance as a conductance to 0.
/// Source: Dendy, J. Comput. Phys. 48 (1982) 366 (from memory); the clamps are our own.
/// </remarks>
internal static unsafe class Interpolation
{
    /// <summary>Computes the weights of all cells.</summary>
    /// <param name="level">The finer grid.</param>
    public static void Compute(MultigridLevel level)
    {
        // Cells amid four coarse points use the weights of their neighbours in odd columns and in odd rows.
        for (int pass = 0; pass < 2; pass++)
        {
            for (int row = 0; row < level.Layout.Rows; row++)
            {
                for (int column = 0; column < level.Layout.Columns; column++)
                {
                    bool amidFour = (row & column & 1) == 1;
                    if (amidFour == (pass == 1)) ComputeCell(level, column, row, amidFour);
                }
            }
        }
    }

    private static void ComputeCell(MultigridLevel level, int column, int row, bool amidFour)
    {
        int at = level.Layout.At(column, row);
        float lowerLeft = 0, lowerRight = 0, upperLeft = 0, upperRight = 0;
        if (level.Diagonal.Origin[at] > 0)
        {
            Neighbourhood n = Neighbourhood.Of(level, at);
            if (amidFour) AmidFour(level, at, in n, out lowerLeft, out lowerRight, out upperLeft, out upperRight);
            else if ((column & 1) == 1) Between(n.West + n.SouthWest + n.NorthWest, n.East + n.SouthEast + n.NorthEast, n.ToZero, out lowerLeft, out lowerRight);
            else if ((row & 1) == 1) Between(n.South + n.SouthWest + n.SouthEast, n.North + n.NorthWest + n.NorthEast, n.ToZero, out lowerLeft, out upperLeft);
            else lowerLeft = 1;
        }

        level.LowerLeft.Origin[at] = lowerLeft;
        level.LowerRight.Origin[at] = lowerRight;
        level.UpperLeft.Origin[at] = upperLeft;
        level.UpperRight.Origin[at] = upperRight;
    }

    private static void Between(float first, float second, float toZero, out float firstWeight, out float secondWeight)
    {
        first = Math.Max(0, first);
        second = Math.Max(0, second);
        float all = first + second + toZero;
        firstWeight = all > 0 ? first / all : 0;
        secondWeight = all > 0 ? second / all : 0;
    }

    private static void AmidFour(
        MultigridLevel level, int at, in Neighbourhood n, out float lowerLeft, out float lowerRight, out float upperLeft, out float upperRight)
    {
        int stride = level.Layout.Stride;
        float* ll = level.LowerLeft.Origin, lr = level.LowerRight.Origin, ul = level.UpperLeft.Origin;

        // South and north neighbours lie between two coarse points of one row, west and east ones between two of one column.
        lowerLeft = n.SouthWest + n.South * ll[at - stride] + n.West * ll[at - 1];
        lowerRight = n.SouthEast + n.South * lr[at - stride] + n.East * ll[at + 1];
        upperLeft = n.NorthWest + n.North * ll[at + stride] + n.West * ul[at - 1];
        upperRight = n.NorthEast + n.North * lr[at + stride] + n.East * ul[at + 1];
        lowerLeft = Math.Max(0, lowerLeft);
        lowerRight = Math.Max(0, lowerRight);
        upperLeft = Math.Max(0, upperLeft);
        upperRight = Math.Max(0, upperRight);
        float diagonal = Math.Max(level.Diagonal.Origin[at], lowerLeft + lowerRight + upperLeft + upperRight);
        lowerLeft /= diagonal;
        lowerRight /= diagonal;
        upperLeft /= diagonal;
        upperRight /= diagonal;
    }

    /// <summary>Couplings of one cell to the neighbours that take part, and the rest of its diagonal.</summary>
    private struct Neighbourhood
    {
        public float West, East, South, North, SouthWest, SouthEast, NorthWest, NorthEast;

        /// <summary>Conductance to a pressure of 0: to feeds, vents and neighbours that take no part.</summary>
        public float ToZero;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static Neighbourhood Of(MultigridLevel level, int at)
        {
            int s = level.Layout.Stride;
            float* d = level.Diagonal.Origin;
            float* e = level.East.Origin, n = level.North.Origin;
            Neighbourhood here = default;
            here.West = d[at - 1] > 0 ? e[at - 1] : 0;
            here.East = d[at + 1] > 0 ? e[at] : 0;
            here.South = d[at - s] > 0 ? n[at - s] : 0;
            here.North = d[at + s] > 0 ? n[at] : 0;
            float sum = here.West + here.East + here.South + here.North;
            if (level.NorthEast is not null)
            {
                float* ne = level.NorthEast.Origin, nw = level.NorthWest!.Origin;
                here.SouthWest = d[at - s - 1] > 0 ? ne[at - s - 1] : 0;
                here.NorthEast = d[at + s + 1] > 0 ? ne[at] : 0;
                here.SouthEast = d[at - s + 1] > 0 ? nw[at - s + 1] : 0;
                here.NorthWest = d[at + s - 1] > 0 ? nw[at] : 0;
                sum += here.SouthWest + here.SouthEast + here.NorthWest + here.NorthEast;
            }

            here.ToZero = Math.Max(0, d[at] - sum);
            return here;
        }
    }
}

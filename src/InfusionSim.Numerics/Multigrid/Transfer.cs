using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Residuals down to the coarser grid, corrections back up: one the transpose of the other.</summary>
internal static unsafe class Transfer
{
    /// <summary>Sets one row of the coarse right-hand side to the restricted residual of the three finer rows around it.</summary>
    /// <param name="level">Finer grid.</param>
    /// <param name="coarse">Coarser grid; its Load is overwritten in the row.</param>
    /// <param name="row">Row of the coarser grid.</param>
    /// <param name="buffer">Room for rows of the finer grid.</param>
    public static void RestrictRow(MultigridLevel level, MultigridLevel coarse, int row, RowBuffer buffer)
    {
        int start = coarse.Active.Start(row), end = coarse.Active.End(row), fineEnd = 2 * end;
        if (start >= end) return;
        new Span<float>(buffer.Left + 2 * start, fineEnd - 2 * start + 1).Clear();
        new Span<float>(buffer.Right + 2 * start - 1, fineEnd - 2 * start + 1).Clear();
        if (row > 0) AddResidualRow(level, 2 * row - 1, level.UpperLeft, level.UpperRight, buffer, 2 * start, fineEnd);
        AddResidualRow(level, 2 * row, level.LowerLeft, level.LowerRight, buffer, 2 * start, fineEnd);
        if (2 * row + 1 < level.Layout.Rows) AddResidualRow(level, 2 * row + 1, level.LowerLeft, level.LowerRight, buffer, 2 * start, fineEnd);

        float* load = coarse.Load.Row(row), left = buffer.Left, right = buffer.Right;
        for (int i = start; i < end; i += PaddedLayout.Lanes / 2)
        {
            Vector512<float> sum = Load(left + 2 * i) + Load(left + 2 * i + 1) + Load(right + 2 * i - 1);
            Shuffle(sum, Create(0, 2, 4, 6, 8, 10, 12, 14, 0, 2, 4, 6, 8, 10, 12, 14)).GetLower().Store(load + i);
        }
    }

    /// <summary>Adds the interpolated correction to one row of the finer grid.</summary>
    /// <param name="level">Finer grid.</param>
    /// <param name="coarse">Coarser grid, its Value solved for.</param>
    /// <param name="row">Row of the finer grid.</param>
    public static void AddCorrectionRow(MultigridLevel level, MultigridLevel coarse, int row)
    {
        int end = level.Active.End(row);
        bool hasUpper = (row & 1) == 1 && row / 2 + 1 < coarse.Layout.Rows;
        float* lower = coarse.Value.Row(row / 2), upper = coarse.Value.Row(row / 2 + 1);
        float* lowerLeft = level.LowerLeft.Row(row), lowerRight = level.LowerRight.Row(row);
        float* upperLeft = level.UpperLeft.Row(row), upperRight = level.UpperRight.Row(row);
        float* x = level.Value.Row(row), diagonal = level.Diagonal.Row(row);
        for (int i = level.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            // A cell in an even column has no weight on the right, so what stands there does not matter.
            Vector512<float> correction = Load(lowerLeft + i) * TwiceEach(lower + i / 2);
            Vector512<float> other = Load(lowerRight + i) * TwiceEach(lower + i / 2 + 1);
            if (hasUpper)
            {
                correction = FusedMultiplyAdd(Load(upperLeft + i), TwiceEach(upper + i / 2), correction);
                other = FusedMultiplyAdd(Load(upperRight + i), TwiceEach(upper + i / 2 + 1), other);
            }

            Vector512<float> takesPart = GreaterThan(Load(diagonal + i), Vector512<float>.Zero);
            (Load(x + i) + ((correction + other) & takesPart)).Store(x + i);
        }
    }

    /// <summary>Eight coarse values, each for the two columns it stands to the left of.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<float> TwiceEach(float* coarse) =>
        Shuffle(Load(coarse), Create(0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7));

    private static void AddResidualRow(
        MultigridLevel level, int row, Field<float> leftWeight, Field<float> rightWeight, RowBuffer buffer, int from, int to)
    {
        int stride = level.Layout.Stride;
        float* x = level.Value.Row(row), b = level.Load.Row(row);
        float* diagonal = level.Diagonal.Row(row), inverse = level.InverseDiagonal.Row(row);
        float* wl = leftWeight.Row(row), wr = rightWeight.Row(row), left = buffer.Left, right = buffer.Right;
        RowCouplings couplings = new(level, row);
        int start = Math.Max(level.Active.Start(row), PaddedLayout.RoundDown(Math.Max(0, from - 1))), end = Math.Min(level.Active.End(row), to);
        for (int i = start; i < end; i += PaddedLayout.Lanes)
        {
            // Written so that a cell that takes no part, whose diagonal is 0, leaves no residual.
            Vector512<float> relaxed = couplings.Inflow(x + i, i, stride, Load(x + i - 1), Load(x + i + 1), Load(b + i)) * Load(inverse + i);
            Vector512<float> residual = (relaxed - Load(x + i)) * Load(diagonal + i);
            FusedMultiplyAdd(residual, Load(wl + i), Load(left + i)).Store(left + i);
            FusedMultiplyAdd(residual, Load(wr + i), Load(right + i)).Store(right + i);
        }
    }
}

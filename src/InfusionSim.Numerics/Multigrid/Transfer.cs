using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Residuals down to the coarser grid, corrections back up: one the transpose of the other.</summary>
internal static unsafe class Transfer
{
    /// <summary>Sets the coarse right-hand side to the restricted residual of the finer grid.</summary>
    /// <param name="level">Finer grid.</param>
    /// <param name="coarse">Coarser grid; its Load is overwritten.</param>
    /// <param name="buffer">Room for rows of the finer grid.</param>
    public static void RestrictResidual(MultigridLevel level, MultigridLevel coarse, RowBuffer buffer)
    {
        int fineRows = level.Layout.Rows;
        for (int row = 0; row < coarse.Layout.Rows; row++)
        {
            int start = coarse.Active.Start(row), end = coarse.Active.End(row);
            if (start >= end) continue;
            int fineEnd = 2 * end;
            new Span<float>(buffer.Left + 2 * start, fineEnd - 2 * start + 1).Clear();
            new Span<float>(buffer.Right + 2 * start - 1, fineEnd - 2 * start + 1).Clear();
            if (2 * row - 1 >= 0) AddResidualRow(level, 2 * row - 1, level.UpperLeft, level.UpperRight, buffer, 2 * start, fineEnd);
            AddResidualRow(level, 2 * row, level.LowerLeft, level.LowerRight, buffer, 2 * start, fineEnd);
            if (2 * row + 1 < fineRows) AddResidualRow(level, 2 * row + 1, level.LowerLeft, level.LowerRight, buffer, 2 * start, fineEnd);

            float* load = coarse.Load.Row(row), left = buffer.Left, right = buffer.Right;
            for (int i = start; i < end; i++) load[i] = left[2 * i] + left[2 * i + 1] + right[2 * i - 1];
        }
    }

    /// <summary>Adds the interpolated correction to one row of the finer grid.</summary>
    /// <param name="level">Finer grid.</param>
    /// <param name="coarse">Coarser grid, its Value solved for.</param>
    /// <param name="row">Row of the finer grid.</param>
    /// <param name="buffer">Room for rows of the finer grid.</param>
    public static void AddCorrectionRow(MultigridLevel level, MultigridLevel coarse, int row, RowBuffer buffer)
    {
        int start = level.Active.Start(row), end = level.Active.End(row);
        if (start >= end) return;
        AddInterpolatedRow(level, coarse, row, row / 2, level.LowerLeft, level.LowerRight, buffer);
        if ((row & 1) == 1 && row / 2 + 1 < coarse.Layout.Rows)
            AddInterpolatedRow(level, coarse, row, row / 2 + 1, level.UpperLeft, level.UpperRight, buffer);
    }

    private static void AddInterpolatedRow(
        MultigridLevel level, MultigridLevel coarse, int row, int coarseRow, Field<float> leftWeight, Field<float> rightWeight, RowBuffer buffer)
    {
        int start = level.Active.Start(row), end = level.Active.End(row);
        float* c = coarse.Value.Row(coarseRow), left = buffer.Left, right = buffer.Right;
        for (int i = start / 2; i < end / 2; i++)
        {
            float here = c[i];
            left[2 * i] = here;
            left[2 * i + 1] = here;
            right[2 * i] = 0;
            right[2 * i + 1] = c[i + 1];
        }

        float* x = level.Value.Row(row), wl = leftWeight.Row(row), wr = rightWeight.Row(row), diagonal = level.Diagonal.Row(row);
        for (int i = start; i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> correction = FusedMultiplyAdd(Load(wl + i), Load(left + i), Load(wr + i) * Load(right + i));
            Vector512<float> takesPart = GreaterThan(Load(diagonal + i), Vector512<float>.Zero);
            (Load(x + i) + (correction & takesPart)).Store(x + i);
        }
    }

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
            Vector512<float> relaxed = couplings.Inflow(x + i, i, stride, Load(b + i)) * Load(inverse + i);
            Vector512<float> residual = (relaxed - Load(x + i)) * Load(diagonal + i);
            FusedMultiplyAdd(residual, Load(wl + i), Load(left + i)).Store(left + i);
            FusedMultiplyAdd(residual, Load(wr + i), Load(right + i)).Store(right + i);
        }
    }
}

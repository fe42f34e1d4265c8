using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Residuals down to the coarser grid, corrections back up: one the transpose of the other.</summary>
internal static unsafe class Transfer
{
    /// <summary>Sets one row of the coarse right-hand side to the restricted residual of the finer rows around it.</summary>
    /// <param name="level">Finer grid.</param>
    /// <param name="coarse">Coarser grid; its Load is overwritten in the row.</param>
    /// <param name="row">Row of the coarser grid.</param>
    /// <param name="buffer">Room for rows of the finer grid.</param>
    public static void RestrictRow(MultigridLevel level, MultigridLevel coarse, int row, RowBuffer buffer)
    {
        int start = coarse.Active.Start(row), end = coarse.Active.End(row);
        if (start >= end) return;
        (int byColumns, int byRows) = level.Coarsening;
        int fineStart = byColumns * start, fineEnd = byColumns * end;
        for (int layer = 0; layer < level.Layout.Layers; layer++)
        {
            new Span<float>(buffer.Left + fineStart, fineEnd - fineStart + 1).Clear();
            new Span<float>(buffer.Right + fineStart - 1, fineEnd - fineStart + 1).Clear();
            if (byRows == 1)
            {
                AddResidualRow(level, row, layer, level.LowerLeft, level.LowerRight, buffer, fineStart, fineEnd);
            }
            else
            {
                if (row > 0) AddResidualRow(level, 2 * row - 1, layer, level.UpperLeft, level.UpperRight, buffer, fineStart, fineEnd);
                AddResidualRow(level, 2 * row, layer, level.LowerLeft, level.LowerRight, buffer, fineStart, fineEnd);
                if (2 * row + 1 < level.Layout.Rows) AddResidualRow(level, 2 * row + 1, layer, level.LowerLeft, level.LowerRight, buffer, fineStart, fineEnd);
            }

            float* load = coarse.Load.Row(row, layer), left = buffer.Left, right = buffer.Right;
            if (byColumns == 1)
            {
                for (int i = start; i < end; i += PaddedLayout.Lanes) Load(left + i).Store(load + i);
                continue;
            }

            for (int i = start; i < end; i += PaddedLayout.Lanes / 2)
            {
                Vector512<float> sum = Load(left + 2 * i) + Load(left + 2 * i + 1) + Load(right + 2 * i - 1);
                Shuffle(sum, Create(0, 2, 4, 6, 8, 10, 12, 14, 0, 2, 4, 6, 8, 10, 12, 14)).GetLower().Store(load + i);
            }
        }
    }

    /// <summary>Adds the interpolated correction to one row of the finer grid.</summary>
    /// <param name="level">Finer grid.</param>
    /// <param name="coarse">Coarser grid, its Value solved for.</param>
    /// <param name="row">Row of the finer grid.</param>
    public static void AddCorrectionRow(MultigridLevel level, MultigridLevel coarse, int row)
    {
        (int byColumns, int byRows) = level.Coarsening;
        int lowerRow = row / byRows;
        bool hasUpper = byRows == 2 && (row & 1) == 1 && lowerRow + 1 < coarse.Layout.Rows;
        for (int layer = 0; layer < level.Layout.Layers; layer++)
        {
            if (byColumns == 1) AddAlongColumns(level, coarse, row, layer, lowerRow, hasUpper);
            else AddAmidColumns(level, coarse, row, layer, lowerRow, hasUpper);
        }
    }

    private static void AddAmidColumns(MultigridLevel level, MultigridLevel coarse, int row, int layer, int lowerRow, bool hasUpper)
    {
        int end = level.Active.End(row);
        float* lower = coarse.Value.Row(lowerRow, layer), upper = coarse.Value.Row(lowerRow + 1, layer);
        float* lowerLeft = level.LowerLeft.Row(row, layer), lowerRight = level.LowerRight.Row(row, layer);
        float* upperLeft = level.UpperLeft.Row(row, layer), upperRight = level.UpperRight.Row(row, layer);
        float* x = level.Value.Row(row, layer), diagonal = level.Diagonal.Row(row, layer);
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

    private static void AddAlongColumns(MultigridLevel level, MultigridLevel coarse, int row, int layer, int lowerRow, bool hasUpper)
    {
        int end = level.Active.End(row);
        float* lower = coarse.Value.Row(lowerRow, layer), upper = coarse.Value.Row(lowerRow + 1, layer);
        float* lowerLeft = level.LowerLeft.Row(row, layer), upperLeft = level.UpperLeft.Row(row, layer);
        float* x = level.Value.Row(row, layer), diagonal = level.Diagonal.Row(row, layer);
        for (int i = level.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> correction = Load(lowerLeft + i) * Load(lower + i);
            if (hasUpper) correction = FusedMultiplyAdd(Load(upperLeft + i), Load(upper + i), correction);
            Vector512<float> takesPart = GreaterThan(Load(diagonal + i), Vector512<float>.Zero);
            (Load(x + i) + (correction & takesPart)).Store(x + i);
        }
    }

    /// <summary>Eight coarse values, each for the two columns it stands to the left of.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<float> TwiceEach(float* coarse) =>
        Shuffle(Load(coarse), Create(0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7));

    private static void AddResidualRow(
        MultigridLevel level, int row, int layer, Field<float> leftWeight, Field<float> rightWeight, RowBuffer buffer, int from, int to)
    {
        int start = Math.Max(level.Active.Start(row), PaddedLayout.RoundDown(Math.Max(0, from - 1))), end = Math.Min(level.Active.End(row), to);
        RowResidual.AddWeighted(level, row, layer, start, end, leftWeight, rightWeight, buffer.Left, buffer.Right);
    }
}

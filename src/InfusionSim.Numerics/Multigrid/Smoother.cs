using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Red-black Gauss-Seidel: red cells have an even sum of column and row. With layers the cells above one another are relaxed together, by
/// elimination.</summary>
/// <remarks>
/// The sweep before the coarse grid runs upwards, red before black; the one after it is its exact mirror, so that a
/// cycle is a symmetric operator as conjugate gradients need. A whole vector is computed and the other colour kept:
/// that costs less than gathering one colour. Source: Trottenberg, Oosterlee and Schüller, Multigrid (2001), ch. 2 and 5 (from memory).
/// </remarks>
internal static unsafe class Smoother
{
    /// <summary>First sweep, from zero values, and the restriction of what it leaves to the coarser grid.</summary>
    /// <remarks>Each row follows the one before while that is still in the cache; only line nodes, which have to come in between, hold the
    /// restriction back.</remarks>
    /// <param name="level">Grid; its Value is overwritten.</param>
    /// <param name="coarse">Next coarser grid; its Load is overwritten.</param>
    /// <param name="buffer">Room for rows of the finer grid.</param>
    /// <param name="lines">Line nodes joined to the grid; null for none.</param>
    public static void SweepUpAndRestrict(MultigridLevel level, MultigridLevel coarse, RowBuffer buffer, LevelLines? lines)
    {
        int rows = level.Layout.Rows, restricted = 0;
        for (int row = 0; row <= rows + 1; row++)
        {
            if (row < rows) RelaxRow(level, row, Red(row), fromZero: true);
            if (row > 0 && row <= rows) RelaxRow(level, row - 1, Black(row - 1), fromZero: false);
            if (lines is not null) continue;

            // The residual of a row is final once the row above it is.
            while (restricted < coarse.Layout.Rows && row - 2 >= LastFineRow(level, restricted)) Transfer.RestrictRow(level, coarse, restricted++, buffer);
        }

        if (lines is null) return;
        lines.BalanceFirst();
        while (restricted < coarse.Layout.Rows) Transfer.RestrictRow(level, coarse, restricted++, buffer);
    }

    /// <summary>Adds the correction of the coarser grid, then sweeps downwards: the mirror of the first sweep.</summary>
    /// <param name="level">Grid.</param>
    /// <param name="coarse">Next coarser grid, its Value solved for.</param>
    /// <param name="lines">Line nodes joined to the grid; null for none.</param>
    public static void CorrectAndSweepDown(MultigridLevel level, MultigridLevel coarse, LevelLines? lines)
    {
        int rows = level.Layout.Rows, corrected = rows;
        Correct(lines is null ? rows - 1 : 0);
        lines?.BalanceAgain();
        for (int row = rows - 1; row >= -1; row--)
        {
            Correct(row - 1);
            if (row >= 0) RelaxRow(level, row, Black(row), fromZero: false);
            if (row + 1 < rows) RelaxRow(level, row + 1, Red(row + 1), fromZero: false);
        }

        void Correct(int downTo)
        {
            while (corrected > Math.Max(0, downTo)) Transfer.AddCorrectionRow(level, coarse, --corrected);
        }
    }

    private static int LastFineRow(MultigridLevel level, int coarseRow) =>
        level.Coarsening.Rows == 1 ? coarseRow : Math.Min(2 * coarseRow + 1, level.Layout.Rows - 1);

    private static Vector512<float> Red(int row) => (row & 1) == 0 ? PaddedLayout.EvenColumns : PaddedLayout.OddColumns;

    private static Vector512<float> Black(int row) => (row & 1) == 0 ? PaddedLayout.OddColumns : PaddedLayout.EvenColumns;

    private static void RelaxRow(MultigridLevel level, int row, Vector512<float> colour, bool fromZero)
    {
        if (level.Above is not null) RelaxColumns(level, row, colour, fromZero);
        else if (fromZero) StartRow(level, row, colour);
        else RelaxCells(level, row, colour);
    }

    private static void StartRow(MultigridLevel level, int row, Vector512<float> red)
    {
        int stride = level.Layout.Stride, end = level.Active.End(row);
        float* x = level.Value.Row(row), b = level.Load.Row(row), inverse = level.InversePivot.Row(row);
        RowCouplings couplings = new(level, row);
        for (int i = level.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> sum = couplings.InflowFromBelowDiagonally(x + i, i, stride, Load(b + i));
            ConditionalSelect(red, sum * Load(inverse + i), Vector512<float>.Zero).Store(x + i);
        }
    }

    private static void RelaxCells(MultigridLevel level, int row, Vector512<float> colour)
    {
        int stride = level.Layout.Stride, end = level.Active.End(row);
        float* x = level.Value.Row(row), b = level.Load.Row(row), inverse = level.InversePivot.Row(row);
        RowCouplings couplings = new(level, row);
        int start = level.Active.Start(row);
        if (start >= end) return;

        // The neighbours in the row have the other colour, which this pass leaves as it is: what was read before a store holds.
        Vector512<float> before = Load(x + start - PaddedLayout.Lanes), here = Load(x + start);
        for (int i = start; i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> after = Load(x + i + PaddedLayout.Lanes);
            Vector512<float> sum = couplings.Inflow(x + i, i, stride, LaneShift.Left(before, here), LaneShift.Right(here, after), Load(b + i));
            ConditionalSelect(colour, sum * Load(inverse + i), here).Store(x + i);
            before = here;
            here = after;
        }
    }

    /// <summary>Relaxes sixteen columns of cells at a time: forwards from the lowest layer, back from the highest.</summary>
    [SkipLocalsInit]
    private static void RelaxColumns(MultigridLevel level, int row, Vector512<float> colour, bool fromZero)
    {
        int stride = level.Layout.Stride, layers = level.Layout.Layers, layerStride = level.Layout.LayerStride, end = level.Active.End(row);
        float* x = level.Value.Row(row), b = level.Load.Row(row), inverse = level.InversePivot.Row(row), above = level.Above!.Row(row);
        float* forward = stackalloc float[layers * PaddedLayout.Lanes];
        float* east = level.East.Row(row), north = level.North.Row(row), south = level.North.Row(row - 1);
        float* northEast = null, southWest = null, northWest = null, southEast = null;
        if (level.NorthEast is not null)
        {
            northEast = level.NorthEast.Row(row);
            southWest = level.NorthEast.Row(row - 1) - 1;
            northWest = level.NorthWest!.Row(row);
            southEast = level.NorthWest.Row(row - 1) + 1;
        }

        for (int i = level.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> fromBelow = Vector512<float>.Zero;
            for (int layer = 0, at = i; layer < layers; layer++, at += layerStride)
            {
                Vector512<float> sum = Load(b + at), other = Vector512<float>.Zero;
                if (!fromZero)
                {
                    Vector512<float> here = Load(x + at);
                    sum = FusedMultiplyAdd(Load(east + at), LaneShift.Right(here, Load(x + at + PaddedLayout.Lanes)), sum);
                    other = Load(east + at - 1) * LaneShift.Left(Load(x + at - PaddedLayout.Lanes), here);
                    sum = FusedMultiplyAdd(Load(north + at), Load(x + at + stride), sum);
                    other = FusedMultiplyAdd(Load(south + at), Load(x + at - stride), other);
                }

                // Below lies all that a first sweep has set beside a red cell.
                if (northEast != null)
                {
                    other = FusedMultiplyAdd(Load(southWest + at), Load(x + at - stride - 1), other);
                    other = FusedMultiplyAdd(Load(southEast + at), Load(x + at - stride + 1), other);
                    if (!fromZero)
                    {
                        sum = FusedMultiplyAdd(Load(northEast + at), Load(x + at + stride + 1), sum);
                        sum = FusedMultiplyAdd(Load(northWest + at), Load(x + at + stride - 1), sum);
                    }
                }

                sum += other;
                Vector512<float> eliminated = (sum + fromBelow) * Load(inverse + at);
                eliminated.Store(forward + layer * PaddedLayout.Lanes);
                fromBelow = eliminated * Load(above + at);
            }

            Vector512<float> next = Vector512<float>.Zero;
            for (int layer = layers - 1, at = i + (layers - 1) * layerStride; layer >= 0; layer--, at -= layerStride)
            {
                next = FusedMultiplyAdd(Load(above + at) * Load(inverse + at), next, Load(forward + layer * PaddedLayout.Lanes));
                ConditionalSelect(colour, next, fromZero ? Vector512<float>.Zero : Load(x + at)).Store(x + at);
            }
        }
    }
}

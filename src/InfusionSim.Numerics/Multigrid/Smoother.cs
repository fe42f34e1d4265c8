using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Red-black Gauss-Seidel: red cells have an even sum of column and row.</summary>
/// <remarks>
/// The sweep before the coarse grid runs upwards, red before black; the one after it is its exact mirror, so that a
/// cycle is a symmetric operator as conjugate gradients need. A whole vector is computed and the other colour kept:
/// that costs less than gathering one colour. Source: Trottenberg, Oosterlee and Schüller, Multigrid (2001), ch. 2 and 5 (from memory).
/// </remarks>
internal static unsafe class Smoother
{
    /// <summary>First sweep, from zero values, and the restriction of what it leaves to the coarser grid.</summary>
    /// <remarks>Each row follows the one before while that is still in the cache.</remarks>
    /// <param name="level">Grid; its Value is overwritten.</param>
    /// <param name="coarse">Next coarser grid; its Load is overwritten.</param>
    /// <param name="buffer">Room for rows of the finer grid.</param>
    public static void SweepUpAndRestrict(MultigridLevel level, MultigridLevel coarse, RowBuffer buffer)
    {
        int rows = level.Layout.Rows, restricted = 0;
        for (int row = 0; row <= rows + 1; row++)
        {
            if (row < rows) StartRow(level, row);
            if (row > 0 && row <= rows) RelaxRow(level, row - 1, Black(row - 1));

            // The residual of a row is final once the row above it is.
            while (restricted < coarse.Layout.Rows && row - 2 >= Math.Min(2 * restricted + 1, rows - 1))
                Transfer.RestrictRow(level, coarse, restricted++, buffer);
        }
    }

    /// <summary>Adds the correction of the coarser grid, then sweeps downwards: the mirror of the first sweep.</summary>
    /// <param name="level">Grid.</param>
    /// <param name="coarse">Next coarser grid, its Value solved for.</param>
    public static void CorrectAndSweepDown(MultigridLevel level, MultigridLevel coarse)
    {
        int rows = level.Layout.Rows;
        Transfer.AddCorrectionRow(level, coarse, rows - 1);
        for (int row = rows - 1; row >= -1; row--)
        {
            if (row > 0) Transfer.AddCorrectionRow(level, coarse, row - 1);
            if (row >= 0) RelaxRow(level, row, Black(row));
            if (row + 1 < rows) RelaxRow(level, row + 1, Red(row + 1));
        }
    }

    private static Vector512<float> Red(int row) => (row & 1) == 0 ? PaddedLayout.EvenColumns : PaddedLayout.OddColumns;

    private static Vector512<float> Black(int row) => (row & 1) == 0 ? PaddedLayout.OddColumns : PaddedLayout.EvenColumns;

    private static void StartRow(MultigridLevel level, int row)
    {
        int stride = level.Layout.Stride, end = level.Active.End(row);
        float* x = level.Value.Row(row), b = level.Load.Row(row), inverse = level.InverseDiagonal.Row(row);
        RowCouplings couplings = new(level, row);
        Vector512<float> red = Red(row);
        for (int i = level.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> sum = couplings.InflowFromBelowDiagonally(x + i, i, stride, Load(b + i));
            ConditionalSelect(red, sum * Load(inverse + i), Vector512<float>.Zero).Store(x + i);
        }
    }

    private static void RelaxRow(MultigridLevel level, int row, Vector512<float> colour)
    {
        int stride = level.Layout.Stride, end = level.Active.End(row);
        float* x = level.Value.Row(row), b = level.Load.Row(row), inverse = level.InverseDiagonal.Row(row);
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
}

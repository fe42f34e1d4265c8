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
    /// <summary>First sweep, from zero values.</summary>
    /// <param name="level">Grid; its Value is overwritten.</param>
    public static void SweepUpFromZero(MultigridLevel level)
    {
        int rows = level.Layout.Rows;
        for (int row = 0; row <= rows; row++)
        {
            if (row < rows) StartRow(level, row);
            if (row > 0) RelaxRow(level, row - 1, Black(row - 1));
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
        for (int i = level.Active.Start(row); i < end; i += PaddedLayout.Lanes)
        {
            Vector512<float> sum = couplings.Inflow(x + i, i, stride, Load(b + i));
            ConditionalSelect(colour, sum * Load(inverse + i), Load(x + i)).Store(x + i);
        }
    }
}

using System.Runtime.CompilerServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>The operator of a coarse grid: interpolation, fine operator, and the transpose of the interpolation, multiplied out (Galerkin).</summary>
/// <remarks>Fine cells that take no part are not interpolated to, so a coarse point acts on those around it that do.</remarks>
internal static unsafe class CoarseOperator
{
    // The finest conductances are near 1; one over anything below this would come close to the end of single precision.
    private const double SmallestDiagonal = 1e-18;

    private const int Patch = 7;
    private const int Middle = 3;

    /// <summary>Recomputes the couplings of some coarse cells, those to the right and above of each included.</summary>
    /// <param name="fine">The finer grid, its weights up to date.</param>
    /// <param name="coarse">The coarser grid.</param>
    /// <param name="cells">Which coarse cells.</param>
    [SkipLocalsInit]
    public static void Update(MultigridLevel fine, MultigridLevel coarse, CellSet cells)
    {
        double* image = stackalloc double[Patch * Patch];
        foreach ((int column, int row) in cells.Cells)
        {
            int at = coarse.Layout.At(column, row);
            Apply(fine, fine.Layout.At(2 * column, 2 * row), image);
            double diagonal = Project(fine, column, row, 0, 0, image);
            bool takesPart = diagonal > SmallestDiagonal;
            coarse.Diagonal.Origin[at] = takesPart ? (float)diagonal : 0;
            coarse.InverseDiagonal.Origin[at] = takesPart ? (float)(1 / diagonal) : 0;
            coarse.East.Origin[at] = (float)-Project(fine, column, row, 1, 0, image);
            coarse.North.Origin[at] = (float)-Project(fine, column, row, 0, 1, image);
            coarse.NorthEast!.Origin[at] = (float)-Project(fine, column, row, 1, 1, image);
            coarse.NorthWest!.Origin[at] = (float)-Project(fine, column, row, -1, 1, image);
        }
    }

    /// <summary>Applies the fine operator to the interpolation of one coarse point; the image reaches two cells on each side.</summary>
    private static void Apply(MultigridLevel fine, int centre, double* image)
    {
        new Span<double>(image, Patch * Patch).Clear();
        int s = fine.Layout.Stride;
        float* d = fine.Diagonal.Origin, e = fine.East.Origin, n = fine.North.Origin;
        float* ne = fine.NorthEast is null ? null : fine.NorthEast.Origin, nw = fine.NorthWest is null ? null : fine.NorthWest.Origin;
        for (int y = -1; y <= 1; y++)
        {
            for (int x = -1; x <= 1; x++)
            {
                int at = centre + y * s + x;
                double weight = Weight(fine, at, x, y);
                if (weight == 0) continue;
                double* here = image + (y + Middle) * Patch + x + Middle;
                here[0] += d[at] * weight;
                here[-1] -= e[at - 1] * weight;
                here[1] -= e[at] * weight;
                here[-Patch] -= n[at - s] * weight;
                here[Patch] -= n[at] * weight;
                if (ne == null) continue;
                here[-Patch - 1] -= ne[at - s - 1] * weight;
                here[Patch + 1] -= ne[at] * weight;
                here[-Patch + 1] -= nw[at - s + 1] * weight;
                here[Patch - 1] -= nw[at] * weight;
            }
        }
    }

    /// <summary>Matrix entry between a coarse point and one beside it: the image of the first weighed with the interpolation of the second.</summary>
    private static double Project(MultigridLevel fine, int column, int row, int right, int up, double* image)
    {
        if (column + right < 0) return 0;
        int s = fine.Layout.Stride;
        int centre = fine.Layout.At(2 * (column + right), 2 * (row + up));
        double sum = 0;
        int fromX = Math.Max(-1, -2 - 2 * right), toX = Math.Min(1, 2 - 2 * right), toY = Math.Min(1, 2 - 2 * up);
        if (2 * (row + up) - 1 >= fine.Layout.Rows + PaddedLayout.GhostRows - 1 || 2 * (column + right) > fine.Layout.PaddedColumns) return 0;
        for (int y = -1; y <= toY; y++)
        {
            for (int x = fromX; x <= toX; x++)
                sum += image[(y + 2 * up + Middle) * Patch + x + 2 * right + Middle] * Weight(fine, centre + y * s + x, x, y);
        }

        return sum;
    }

    /// <summary>Weight of a coarse point in the interpolation of a fine cell at most one column and one row away.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static float Weight(MultigridLevel fine, int at, int x, int y)
    {
        if (fine.Diagonal.Origin[at] <= 0) return 0;
        if (y < 0) return x < 0 ? fine.UpperRight.Origin[at] : fine.UpperLeft.Origin[at];
        return x < 0 ? fine.LowerRight.Origin[at] : fine.LowerLeft.Origin[at];
    }
}

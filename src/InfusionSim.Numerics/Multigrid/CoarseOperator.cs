using System.Runtime.CompilerServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>The operator of a coarse grid: interpolation, fine operator, and the transpose of the interpolation, multiplied out (Galerkin).</summary>
/// <remarks>
/// Fine cells that take no part are not interpolated to, so a coarse point acts on those around it that do. The couplings
/// between layers are lumped onto the coarse points instead: multiplied out they would join each point to nine in the next layer.
/// </remarks>
internal static unsafe class CoarseOperator
{
    // The finest conductances are near 1; one over anything below this would come close to the end of single precision.
    private const double SmallestDiagonal = 1e-18;

    private const int Patch = 7;
    private const int Middle = 3;

    /// <summary>Recomputes the couplings of the coarse cells that are marked as changed.</summary>
    /// <param name="fine">The finer grid, its weights up to date.</param>
    /// <param name="coarse">The coarser grid.</param>
    [SkipLocalsInit]
    public static void Update(MultigridLevel fine, MultigridLevel coarse)
    {
        double* image = stackalloc double[Patch * Patch];
        foreach ((int column, int row, int layer) in coarse.Changed.Cells)
        {
            int at = coarse.Layout.At(column, row, layer);
            Apply(fine, fine.Layout.At(fine.Coarsening.Columns * column, fine.Coarsening.Rows * row, layer), image);
            coarse.RowSum!.Origin[at] = ProjectOnAll(fine, column, row, layer, image);
            coarse.East.Origin[at] = (float)-Project(fine, column, row, layer, 1, 0, image);
            coarse.North.Origin[at] = (float)-Project(fine, column, row, layer, 0, 1, image);
            coarse.NorthEast!.Origin[at] = (float)-Project(fine, column, row, layer, 1, 1, image);
            coarse.NorthWest!.Origin[at] = (float)-Project(fine, column, row, layer, -1, 1, image);
        }

        double* lost = stackalloc double[coarse.Layout.Layers];
        foreach ((int column, int row, _) in coarse.ChangedColumns.Cells)
        {
            new Span<double>(lost, coarse.Layout.Layers).Clear();
            if (coarse.Above is not null) LumpLayers(fine, coarse, column, row, lost);
            SetDiagonals(coarse, column, row, lost);
        }
    }

    // The next coarser grid multiplies it into the couplings of the layer.
    private static void SetLost(MultigridLevel coarse, int column, int row, int layer, float lost)
    {
        ref float kept = ref coarse.Lost!.Origin[coarse.Layout.At(column, row, layer)];
        if (kept == lost) return;
        kept = lost;
        coarse.Changed.Add(column, row, layer);
    }

    private static void SetDiagonals(MultigridLevel coarse, int column, int row, double* lost)
    {
        for (int layer = 0; layer < coarse.Layout.Layers; layer++)
        {
            int at = coarse.Layout.At(column, row, layer);
            double toZero = coarse.RowSum!.Origin[at] + lost[layer], rest = toZero + coarse.CouplingSum(at), diagonal = rest;
            coarse.Slack.Origin[at] = (float)(coarse.LinkSum is null ? toZero : toZero - coarse.LinkSum.Origin[at]);
            if (coarse.Above is not null)
            {
                diagonal += coarse.Above.Origin[at] + (layer > 0 ? coarse.Above.Origin[at - coarse.Layout.LayerStride] : 0);
                SetLost(coarse, column, row, layer, (float)lost[layer]);
            }

            bool takesPart = diagonal > SmallestDiagonal;
            coarse.Diagonal.Origin[at] = takesPart ? (float)diagonal : 0;
            coarse.Rest.Origin[at] = takesPart ? (float)rest : 0;
        }

        coarse.EliminateColumn(column, row);
    }

    /// <summary>Joins the coarse points above one another by what joins the fine cells that they act on; what leads to a cell that takes no part
    /// leads to 0.</summary>
    private static void LumpLayers(MultigridLevel fine, MultigridLevel coarse, int column, int row, double* lost)
    {
        PaddedLayout layout = fine.Layout;
        float* above = fine.Above!.Origin, diagonal = fine.Diagonal.Origin;
        int reachX = fine.Coarsening.Columns - 1, reachY = fine.Coarsening.Rows - 1;
        for (int layer = 0; layer + 1 < layout.Layers; layer++)
        {
            int centre = layout.At(fine.Coarsening.Columns * column, fine.Coarsening.Rows * row, layer);
            double joint = 0;
            for (int y = -reachY; y <= reachY; y++)
            {
                for (int x = -reachX; x <= reachX; x++)
                {
                    int at = centre + y * layout.Stride + x;
                    if (above[at] == 0) continue;
                    double here = Weight(fine, at, x, y), next = Weight(fine, at + layout.LayerStride, x, y);
                    if (diagonal[at] > 0 && diagonal[at + layout.LayerStride] > 0)
                    {
                        joint += above[at] * (here + next) / 2;
                    }
                    else
                    {
                        lost[layer] += above[at] * here;
                        lost[layer + 1] += above[at] * next;
                    }
                }
            }

            coarse.Above!.Origin[coarse.Layout.At(column, row, layer)] = (float)joint;
        }
    }

    /// <summary>Applies the fine operator within a layer to the interpolation of one coarse point; the image reaches two cells on each side.</summary>
    private static void Apply(MultigridLevel fine, int centre, double* image)
    {
        new Span<double>(image, Patch * Patch).Clear();
        int s = fine.Layout.Stride;
        int reachX = fine.Coarsening.Columns - 1, reachY = fine.Coarsening.Rows - 1;
        double* links = fine.LinkSum is null ? null : fine.LinkSum.Origin;
        float* slack = fine.Slack.Origin, e = fine.East.Origin, n = fine.North.Origin;
        float* ne = fine.NorthEast is null ? null : fine.NorthEast.Origin, nw = fine.NorthWest is null ? null : fine.NorthWest.Origin;
        for (int y = -reachY; y <= reachY; y++)
        {
            for (int x = -reachX; x <= reachX; x++)
            {
                int at = centre + y * s + x;
                double weight = Weight(fine, at, x, y);
                if (weight == 0) continue;
                double* here = image + (y + Middle) * Patch + x + Middle;
                double rest = slack[at] + fine.CouplingSum(at);
                if (links != null) rest += links[at];
                here[0] += rest * weight;
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
    private static double Project(MultigridLevel fine, int column, int row, int layer, int right, int up, double* image)
    {
        (int stepX, int stepY) = fine.Coarsening;
        int centreX = stepX * (column + right), centreY = stepY * (row + up);
        if (centreX < 0 || centreX > fine.Layout.PaddedColumns || centreY > fine.Layout.Rows + fine.Layout.GhostRows - 1) return 0;
        int s = fine.Layout.Stride;
        int centre = fine.Layout.At(centreX, centreY, layer);
        double sum = 0;
        int reachX = stepX - 1, reachY = stepY - 1;
        int fromX = Math.Max(-reachX, -2 - stepX * right), toX = Math.Min(reachX, 2 - stepX * right), toY = Math.Min(reachY, 2 - stepY * up);
        for (int y = -reachY; y <= toY; y++)
        {
            for (int x = fromX; x <= toX; x++)
                sum += image[(y + stepY * up + Middle) * Patch + x + stepX * right + Middle] * Weight(fine, centre + y * s + x, x, y);
        }

        return sum;
    }

    /// <summary>Sum of a coarse point's matrix entries in its layer: the image weighed with the interpolation of ones.</summary>
    /// <remarks>Not the diagonal less the couplings as they are stored: a cell that conducts a million times better than those round it would lead to
    /// 0, or be fed from nowhere, by more than it leads to them.</remarks>
    private static double ProjectOnAll(MultigridLevel fine, int column, int row, int layer, double* image)
    {
        (int reachX, int reachY) = fine.Coarsening;
        int centre = fine.Layout.At(reachX * column, reachY * row, layer);
        double sum = 0;
        for (int y = -reachY; y <= reachY; y++)
        {
            float* diagonal = fine.Diagonal.Origin + centre + y * fine.Layout.Stride, weights = fine.WeightSum.Origin + centre + y * fine.Layout.Stride;
            double* part = image + (y + Middle) * Patch + Middle;
            for (int x = -reachX; x <= reachX; x++)
                if (diagonal[x] > 0) sum += part[x] * weights[x];
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

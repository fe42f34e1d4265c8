namespace InfusionSim.Numerics.Multigrid;

/// <summary>How a grid is coarsened: by two along the row, along the column, or both; never through the thickness.</summary>
/// <param name="Columns">Fine columns per coarse column [-]: 1 or 2.</param>
/// <param name="Rows">Fine rows per coarse row [-]: 1 or 2.</param>
internal readonly record struct Coarsening(int Columns, int Rows)
{
    // Where cells conduct this much better one way, point relaxation smooths along that way only. Found by trying: 10:1 along an axis.
    private const double Lopsided = 2.5;

    /// <summary>By two in both directions.</summary>
    public static Coarsening Both { get; } = new(2, 2);

    /// <summary>Chooses for a grid: along the way that conducts clearly better, judged by the mean over all cells of the logarithm of the ratio,
    /// else both.</summary>
    /// <remarks>Coarsening only along the strong couplings keeps point relaxation a good smoother; after Trottenberg, Oosterlee and Schüller,
    /// Multigrid (2001), ch. 5.1 (from memory).</remarks>
    /// <param name="level">The grid, with its couplings.</param>
    public static unsafe Coarsening For(MultigridLevel level)
    {
        PaddedLayout layout = level.Layout;
        if (layout.Columns == 1) return layout.Rows == 1 ? Both : new(1, 2);
        if (layout.Rows == 1) return new(2, 1);
        double sum = 0;
        int cells = 0;
        for (int layer = 0; layer < layout.Layers; layer++)
        {
            for (int row = 0; row < layout.Rows; row++)
            {
                float* east = level.East.Row(row, layer), north = level.North.Row(row, layer);
                for (int column = 0; column < layout.Columns; column++)
                {
                    if (!(east[column] > 0 && north[column] > 0)) continue;
                    double along = east[column] + Diagonals(level, layout.At(column, row, layer)), across = along - east[column] + north[column];
                    sum += Math.Log(along / across);
                    cells++;
                }
            }
        }

        double mean = cells > 0 ? sum / cells : 0;
        return mean > Math.Log(Lopsided) ? new(2, 1) : mean < -Math.Log(Lopsided) ? new(1, 2) : Both;
    }

    private static unsafe double Diagonals(MultigridLevel level, int at) =>
        level.NorthEast is null ? 0 : Math.Max(0, level.NorthEast.Origin[at]) + Math.Max(0, level.NorthWest!.Origin[at]);
}

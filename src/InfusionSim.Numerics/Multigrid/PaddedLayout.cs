using System.Runtime.Intrinsics;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Where a cell of a stack of grids lies in memory: layer after layer, rows one after the other, x fastest, with a margin of zeros round
/// each layer so that a neighbour can be read without asking whether it exists.</summary>
internal sealed class PaddedLayout
{
    /// <summary>Cells in one vector of floats.</summary>
    public const int Lanes = 16;

    /// <summary>Fewest rows of zeros below the first and above the last row.</summary>
    public const int FewestGhostRows = 2;

    private const int PageBytes = 4096;
    private const int SpreadBytes = 96;

    /// <summary>Lays out a grid.</summary>
    /// <param name="columns">Cells in a row, at least 1.</param>
    /// <param name="rows">Rows, at least 1.</param>
    /// <param name="layers">Layers, at least 1.</param>
    /// <param name="ghostRows">Rows of zeros below the first and above the last row.</param>
    public PaddedLayout(int columns, int rows, int layers = 1, int ghostRows = FewestGhostRows)
    {
        Columns = columns;
        Rows = rows;
        Layers = layers;
        GhostRows = ghostRows;
        PaddedColumns = RoundUp(columns);
        Stride = PaddedColumns + Lanes;

        // Rows a whole number of pages apart would fall on the same lines of the cache.
        if (Stride * sizeof(float) % PageBytes == 0 || Stride * sizeof(double) % PageBytes == 0) Stride += Lanes;
        LayerStride = (rows + 2 * GhostRows) * Stride;

        // Layers a whole number of pages apart would fall on the same lines of the cache; a third of a page spreads them.
        while (layers > 1 && LayerStride * sizeof(float) % PageBytes is < PageBytes / 3 - SpreadBytes or > PageBytes / 3 + SpreadBytes) LayerStride += Lanes;
        Length = layers * LayerStride + 2 * Lanes;
        First = GhostRows * Stride + Lanes;
    }

    /// <summary>Cells in a row [-].</summary>
    public int Columns { get; }

    /// <summary>Cells in a row, rounded up to whole vectors [-].</summary>
    public int PaddedColumns { get; }

    /// <summary>Rows [-].</summary>
    public int Rows { get; }

    /// <summary>Layers [-].</summary>
    public int Layers { get; }

    /// <summary>Rows of zeros below the first and above the last row [-].</summary>
    public int GhostRows { get; }

    /// <summary>Distance in memory from a cell to the one in the next row [-].</summary>
    public int Stride { get; }

    /// <summary>Distance in memory from a cell to the one in the next layer [-].</summary>
    public int LayerStride { get; }

    /// <summary>Length of an array that holds the grid with its margin [-].</summary>
    public int Length { get; }

    /// <summary>Where cell (0, 0) lies [-].</summary>
    public int First { get; }

    /// <summary>Where a cell lies, counted from cell (0, 0) [-].</summary>
    /// <param name="column">Column.</param>
    /// <param name="row">Row.</param>
    /// <param name="layer">Layer.</param>
    public int At(int column, int row, int layer = 0) => layer * LayerStride + row * Stride + column;

    /// <summary>Which cell lies at a place in memory.</summary>
    /// <param name="at">Where it lies, counted from cell (0, 0) of the lowest layer.</param>
    public (int Column, int Row, int Layer) CellAt(int at)
    {
        int layer = Math.DivRem(at, LayerStride, out int inLayer);
        int row = Math.DivRem(inLayer, Stride, out int column);
        return (column, row, layer);
    }

    /// <summary>Rounds a number of cells up to whole vectors.</summary>
    /// <param name="count">Number of cells, at least 0.</param>
    public static int RoundUp(int count) => (count + Lanes - 1) / Lanes * Lanes;

    /// <summary>Rounds a column down to the start of its vector.</summary>
    /// <param name="column">Column, at least 0.</param>
    public static int RoundDown(int column) => column / Lanes * Lanes;

    /// <summary>Marks the cells of even columns in a vector.</summary>
    public static readonly Vector512<float> EvenColumns = ParityMask(0);

    /// <summary>Marks the cells of odd columns in a vector.</summary>
    public static readonly Vector512<float> OddColumns = ParityMask(1);

    private static Vector512<float> ParityMask(int parity)
    {
        Span<int> bits = stackalloc int[Lanes];
        for (int lane = parity; lane < Lanes; lane += 2) bits[lane] = -1;
        return Vector512.Create<int>(bits).AsSingle();
    }
}

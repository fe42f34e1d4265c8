using System.Runtime.InteropServices;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>A set of cells of a grid, or of columns through its layers: quick to add to, to walk through and to empty.</summary>
internal sealed class CellSet
{
    private readonly int _columns;
    private readonly int _rows;
    private readonly int _layers;
    private readonly int[] _addedIn;
    private readonly List<(int Column, int Row, int Layer)> _cells = [];
    private int _round = 1;

    /// <summary>Makes an empty set.</summary>
    /// <param name="columns">Cells in a row of the grid.</param>
    /// <param name="rows">Its rows.</param>
    /// <param name="layers">Its layers; 1 for a set of columns through them.</param>
    public CellSet(int columns, int rows, int layers)
    {
        _layers = layers;
        _columns = columns;
        _rows = rows;
        _addedIn = new int[columns * rows * layers];
    }

    /// <summary>The cells, in the order they were added.</summary>
    public ReadOnlySpan<(int Column, int Row, int Layer)> Cells => CollectionsMarshal.AsSpan(_cells);

    /// <summary>Adds a cell; outside the grid or a second time nothing happens.</summary>
    /// <param name="column">Column.</param>
    /// <param name="row">Row.</param>
    /// <param name="layer">Layer, inside the grid.</param>
    public void Add(int column, int row, int layer)
    {
        if ((uint)column >= (uint)_columns || (uint)row >= (uint)_rows) return;
        ref int added = ref _addedIn[(layer * _rows + row) * _columns + column];
        if (added == _round) return;
        added = _round;
        _cells.Add((column, row, layer));
    }

    /// <summary>Adds every cell of the grid.</summary>
    public void AddAll()
    {
        for (int line = 0; line < _layers * _rows; line++)
            for (int column = 0; column < _columns; column++) Add(column, line % _rows, line / _rows);
    }

    /// <summary>Adds the coarse cells whose row sums, or couplings to the right and above, depend on fine cells.</summary>
    /// <remarks>Coarsened by two, coarse cell (I, J) and its neighbours reach the fine columns 2I−3 to 2I+3 and rows 2J−2 to 2J+3; not coarsened,
    /// one on each side.</remarks>
    /// <param name="fine">Fine cells.</param>
    /// <param name="by">How the fine grid is coarsened.</param>
    public void AddDependingOn(CellSet fine, Coarsening by)
    {
        foreach ((int column, int row, int layer) in fine.Cells)
        {
            (int fromRow, int toRow) = by.Rows == 2 ? ((row - 2) >> 1, (row + 2) >> 1) : (row - 1, row + 1);
            (int fromColumn, int toColumn) = by.Columns == 2 ? ((column - 2) >> 1, (column + 3) >> 1) : (column - 1, column + 1);
            for (int coarseRow = fromRow; coarseRow <= toRow; coarseRow++)
                for (int coarseColumn = fromColumn; coarseColumn <= toColumn; coarseColumn++)
                    Add(coarseColumn, coarseRow, layer);
        }
    }

    /// <summary>Empties the set.</summary>
    public void Clear()
    {
        _cells.Clear();
        _round++;
    }
}

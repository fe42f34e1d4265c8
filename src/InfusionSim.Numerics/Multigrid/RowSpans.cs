namespace InfusionSim.Numerics.Multigrid;

/// <summary>A run of columns in each row of a grid, empty or not: the part of a field that a pass has to visit.</summary>
internal sealed class RowSpans
{
    private readonly int[] _start;
    private readonly int[] _end;
    private readonly int _grain;

    /// <summary>Makes empty runs.</summary>
    /// <param name="rows">Rows of the grid.</param>
    /// <param name="columns">Cells in a row, to which runs are clipped.</param>
    /// <param name="grain">Runs begin and end at multiples of this: 1, or the cells of a vector.</param>
    public RowSpans(int rows, int columns, int grain = 1)
    {
        _grain = grain;
        _start = new int[rows];
        _end = new int[rows];
        Columns = columns;
        Clear();
    }

    /// <summary>Rows [-].</summary>
    public int Rows => _start.Length;

    /// <summary>Cells in a row [-].</summary>
    public int Columns { get; }

    /// <summary>First column of a row's run [-].</summary>
    /// <param name="row">Row.</param>
    public int Start(int row) => _start[row];

    /// <summary>One past the last column of a row's run [-]; not above Start where the run is empty.</summary>
    /// <param name="row">Row.</param>
    public int End(int row) => _end[row];

    /// <summary>Makes every run empty.</summary>
    public void Clear()
    {
        Array.Fill(_start, int.MaxValue);
        Array.Fill(_end, 0);
    }

    /// <summary>Widens a row's run to hold some columns.</summary>
    /// <param name="row">Row; outside the grid nothing happens.</param>
    /// <param name="start">First column.</param>
    /// <param name="end">One past the last column.</param>
    public void Include(int row, int start, int end)
    {
        if (row < 0 || row >= Rows || start >= end) return;
        _start[row] = Math.Min(_start[row], Math.Max(0, start) / _grain * _grain);
        _end[row] = Math.Max(_end[row], Math.Min(Columns, (end + _grain - 1) / _grain * _grain));
    }

    /// <summary>Widens every run to hold the run of another and some columns and rows round it.</summary>
    /// <param name="other">Runs on the same grid.</param>
    /// <param name="reach">Columns and rows to add on each side.</param>
    public void IncludeAround(RowSpans other, int reach)
    {
        for (int row = 0; row < Rows; row++)
        {
            if (other.Start(row) >= other.End(row)) continue;
            for (int near = row - reach; near <= row + reach; near++) Include(near, other.Start(row) - reach, other.End(row) + reach);
        }
    }

    /// <summary>Widens every run to hold the coarse points whose interpolation reaches a run on the finer grid, or a cell beside it.</summary>
    /// <param name="finer">Runs on the finer grid.</param>
    /// <param name="by">How the finer grid is coarsened.</param>
    public void IncludeCoarsened(RowSpans finer, Coarsening by)
    {
        for (int row = 0; row < finer.Rows; row++)
        {
            if (finer.Start(row) >= finer.End(row)) continue;
            int first = Math.Max(0, row - 1) / by.Rows, last = by.Rows == 2 ? (row + 2) / 2 : row + 1;
            int start = Math.Max(0, finer.Start(row) - 1) / by.Columns, end = (finer.End(row) + 1) / by.Columns + 1;
            for (int coarse = first; coarse <= last; coarse++) Include(coarse, start, end);
        }
    }
}

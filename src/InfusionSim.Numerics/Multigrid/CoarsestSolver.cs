using InfusionSim.Numerics.Lines;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Direct solution on the coarsest grid by Cholesky's factorisation; cells that take no part keep the value 0. Line nodes are eliminated
/// first.</summary>
internal sealed unsafe class CoarsestSolver
{
    // A pivot lost to rounding would blow the correction up; leaving that cell out only costs a cycle.
    private const double LostPivot = 1e-7;

    private readonly MultigridLevel _level;
    private readonly LineSystem? _lineSystem;
    private readonly LevelLines? _lines;
    private readonly double[] _factor;
    private readonly double[] _solution;
    private readonly double[] _throughLines;
    private readonly double[] _lineValues;

    /// <summary>Makes a solver for a grid of a few dozen cells.</summary>
    /// <param name="level">Coarsest grid.</param>
    /// <param name="lineSystem">Line nodes; null for none.</param>
    /// <param name="lines">Their view of the grid; null for none.</param>
    public CoarsestSolver(MultigridLevel level, LineSystem? lineSystem, LevelLines? lines)
    {
        _level = level;
        _lineSystem = lineSystem;
        _lines = lines;
        int n = level.Layout.Columns * level.Layout.Rows * level.Layout.Layers;
        _factor = new double[n * n];
        _solution = new double[n];
        _throughLines = new double[lines is null ? 0 : n * n];
        _lineValues = new double[lineSystem?.Count ?? 0];
    }

    /// <summary>Factorises the current couplings.</summary>
    /// <param name="linesChanged">Whether line nodes, or what joins them to cells, have changed since the last time.</param>
    public void Factorise(bool linesChanged)
    {
        int n = _solution.Length;
        Array.Clear(_factor);
        for (int cell = 0; cell < n; cell++) CoupleForward(cell);
        if (linesChanged && _lines is not null) EliminateLines();
        for (int k = 0; k < _throughLines.Length; k++) _factor[k] -= _throughLines[k];
        for (int k = 0; k < n; k++)
        {
            double pivot = _factor[k * n + k];
            double diagonal = _level.Diagonal.Origin[AtOf(k)];
            for (int j = 0; j < k; j++) pivot -= _factor[k * n + j] * _factor[k * n + j];
            double inverse = pivot > LostPivot * diagonal ? 1 / Math.Sqrt(pivot) : 0;
            for (int i = k + 1; i < n; i++)
            {
                double sum = _factor[i * n + k];
                for (int j = 0; j < k; j++) sum -= _factor[i * n + j] * _factor[k * n + j];
                _factor[i * n + k] = sum * inverse;
            }

            _factor[k * n + k] = inverse;
        }
    }

    /// <summary>Solves for the level's Value, and that of the line nodes, from its Load and theirs.</summary>
    public void Solve()
    {
        int n = _solution.Length;
        for (int k = 0; k < n; k++) _solution[k] = _level.Load.Origin[AtOf(k)];
        if (_lines is not null)
        {
            _lines.Load.CopyTo(_lineValues, 0);
            _lineSystem!.Solve(_lineValues);
            foreach ((int at, int node, double conductance) in _lines.Joins) _solution[CellOf(at)] += conductance * _lineValues[node];
        }

        for (int k = 0; k < n; k++)
        {
            double sum = _solution[k];
            for (int j = 0; j < k; j++) sum -= _factor[k * n + j] * _solution[j];
            _solution[k] = sum * _factor[k * n + k];
        }

        for (int k = n - 1; k >= 0; k--)
        {
            double sum = _solution[k];
            for (int i = k + 1; i < n; i++) sum -= _factor[i * n + k] * _solution[i];
            _solution[k] = sum * _factor[k * n + k];
            _level.Value.Origin[AtOf(k)] = (float)_solution[k];
        }

        if (_lines is null) return;
        _lines.Load.CopyTo(_lines.Value, 0);
        foreach ((int at, int node, double conductance) in _lines.Joins) _lines.Value[node] += conductance * _solution[CellOf(at)];
        _lineSystem!.Solve(_lines.Value);
    }

    private int AtOf(int cell)
    {
        PaddedLayout layout = _level.Layout;
        return layout.At(cell % layout.Columns, cell / layout.Columns % layout.Rows, cell / (layout.Columns * layout.Rows));
    }

    private int CellOf(int at)
    {
        (int column, int row, int layer) = _level.Layout.CellAt(at);
        return (layer * _level.Layout.Rows + row) * _level.Layout.Columns + column;
    }

    private void CoupleForward(int cell)
    {
        PaddedLayout layout = _level.Layout;
        int n = _solution.Length, columns = layout.Columns, column = cell % columns, row = cell / columns % layout.Rows, at = AtOf(cell);
        if (_level.Diagonal.Origin[at] > 0) _factor[cell * n + cell] = _level.ExactDiagonal(at);
        if (column + 1 < columns) Couple(cell, cell + 1, _level.East.Origin[at]);
        if (_level.Above is not null && cell + columns * layout.Rows < n) Couple(cell, cell + columns * layout.Rows, _level.Above.Origin[at]);
        if (row + 1 == layout.Rows) return;
        Couple(cell, cell + columns, _level.North.Origin[at]);
        if (_level.NorthEast is null) return;
        if (column + 1 < columns) Couple(cell, cell + columns + 1, _level.NorthEast.Origin[at]);
        if (column > 0) Couple(cell, cell + columns - 1, _level.NorthWest!.Origin[at]);
    }

    private void Couple(int first, int second, double conductance)
    {
        // On a grid that is also the finest a dry cell keeps its couplings.
        if (_level.Diagonal.Origin[AtOf(first)] <= 0 || _level.Diagonal.Origin[AtOf(second)] <= 0) return;
        _factor[second * _solution.Length + first] = -conductance;
    }

    private void EliminateLines()
    {
        int n = _solution.Length;
        for (int cell = 0; cell < n; cell++)
        {
            Array.Clear(_lineValues);
            foreach ((int at, int node, double conductance) in _lines!.Joins) if (CellOf(at) == cell) _lineValues[node] += conductance;
            _lineSystem!.Solve(_lineValues);
            for (int other = 0; other < n; other++) _throughLines[other * n + cell] = 0;
            foreach ((int at, int node, double conductance) in _lines.Joins) _throughLines[CellOf(at) * n + cell] += conductance * _lineValues[node];
        }
    }
}

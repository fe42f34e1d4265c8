namespace InfusionSim.Numerics.Multigrid;

/// <summary>Direct solution on the coarsest grid by Cholesky's factorisation; cells that take no part keep the value 0.</summary>
internal sealed unsafe class CoarsestSolver
{
    private readonly MultigridLevel _level;
    private readonly double[] _factor;
    private readonly double[] _solution;

    /// <summary>Makes a solver for a grid of a few dozen cells.</summary>
    /// <param name="level">Coarsest grid.</param>
    public CoarsestSolver(MultigridLevel level)
    {
        _level = level;
        int n = level.Layout.Columns * level.Layout.Rows;
        _factor = new double[n * n];
        _solution = new double[n];
    }

    /// <summary>Factorises the current couplings.</summary>
    public void Factorise()
    {
        int columns = _level.Layout.Columns, n = _solution.Length;
        Array.Clear(_factor);
        for (int row = 0; row < _level.Layout.Rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                int cell = row * columns + column, at = _level.Layout.At(column, row);
                _factor[cell * n + cell] = _level.Diagonal.Origin[at];
                if (column + 1 < columns) Couple(cell, cell + 1, _level.East.Origin[at]);
                if (row + 1 == _level.Layout.Rows) continue;
                Couple(cell, cell + columns, _level.North.Origin[at]);
                if (_level.NorthEast is null) continue;
                if (column + 1 < columns) Couple(cell, cell + columns + 1, _level.NorthEast.Origin[at]);
                if (column > 0) Couple(cell, cell + columns - 1, _level.NorthWest!.Origin[at]);
            }
        }

        for (int k = 0; k < n; k++)
        {
            double pivot = _factor[k * n + k];
            double diagonal = _level.Diagonal.Origin[_level.Layout.At(k % columns, k / columns)];
            for (int j = 0; j < k; j++) pivot -= _factor[k * n + j] * _factor[k * n + j];

            // A pivot lost to rounding would blow the correction up; leaving that cell out only costs a cycle.
            double inverse = pivot > 1e-7 * diagonal ? 1 / Math.Sqrt(pivot) : 0;
            for (int i = k + 1; i < n; i++)
            {
                double sum = _factor[i * n + k];
                for (int j = 0; j < k; j++) sum -= _factor[i * n + j] * _factor[k * n + j];
                _factor[i * n + k] = sum * inverse;
            }

            _factor[k * n + k] = inverse;
        }
    }

    /// <summary>Solves for the level's Value from its Load.</summary>
    public void Solve()
    {
        int columns = _level.Layout.Columns, n = _solution.Length;
        for (int k = 0; k < n; k++)
        {
            double sum = _level.Load.Origin[_level.Layout.At(k % columns, k / columns)];
            for (int j = 0; j < k; j++) sum -= _factor[k * n + j] * _solution[j];
            _solution[k] = sum * _factor[k * n + k];
        }

        for (int k = n - 1; k >= 0; k--)
        {
            double sum = _solution[k];
            for (int i = k + 1; i < n; i++) sum -= _factor[i * n + k] * _solution[i];
            _solution[k] = sum * _factor[k * n + k];
            _level.Value.Origin[_level.Layout.At(k % columns, k / columns)] = (float)_solution[k];
        }
    }

    private void Couple(int first, int second, double conductance)
    {
        int n = _solution.Length;
        _factor[Math.Max(first, second) * n + Math.Min(first, second)] = -conductance;
    }
}

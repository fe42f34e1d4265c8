namespace InfusionSim.Numerics.Multigrid;

/// <summary>Balances the cells above one another: a tridiagonal system with four right-hand sides.</summary>
internal sealed class ColumnBalance
{
    private readonly double[] _pivot;
    private readonly double[] _value;

    /// <summary>Makes room.</summary>
    /// <param name="layers">Cells above one another.</param>
    public ColumnBalance(int layers)
    {
        Cells = new CellBalance[layers];
        _pivot = new double[layers];
        _value = new double[layers];
    }

    /// <summary>The cells, the lowest first.</summary>
    public CellBalance[] Cells { get; }

    /// <summary>Replaces couplings by weights.</summary>
    public void Solve()
    {
        for (int layer = 0; layer < Cells.Length; layer++)
        {
            double below = Joint(layer - 1);
            _pivot[layer] = Cells[layer].Own + Joint(layer) + below - (below > 0 ? below * below / _pivot[layer - 1] : 0);
        }

        Solve(static cell => cell.LowerLeft, static (ref CellBalance cell, float weight) => cell.LowerLeft = weight);
        Solve(static cell => cell.LowerRight, static (ref CellBalance cell, float weight) => cell.LowerRight = weight);
        Solve(static cell => cell.UpperLeft, static (ref CellBalance cell, float weight) => cell.UpperLeft = weight);
        Solve(static cell => cell.UpperRight, static (ref CellBalance cell, float weight) => cell.UpperRight = weight);
    }

    private delegate void SetWeight(ref CellBalance cell, float weight);

    private void Solve(Func<CellBalance, float> offer, SetWeight set)
    {
        int count = Cells.Length;
        for (int layer = 0; layer < count; layer++)
        {
            double sum = offer(Cells[layer]) + (layer > 0 ? Joint(layer - 1) * _value[layer - 1] : 0);
            _value[layer] = _pivot[layer] > 0 ? sum / _pivot[layer] : 0;
        }

        for (int layer = count - 1; layer >= 0; layer--)
        {
            if (layer + 1 < count && _pivot[layer] > 0) _value[layer] += Joint(layer) / _pivot[layer] * _value[layer + 1];
            set(ref Cells[layer], (float)_value[layer]);
        }
    }

    private double Joint(int layer) =>
        layer >= 0 && layer + 1 < Cells.Length && Cells[layer].TakesPart && Cells[layer + 1].TakesPart ? Cells[layer].Above : 0;
}

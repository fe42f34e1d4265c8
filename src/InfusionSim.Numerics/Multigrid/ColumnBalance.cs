namespace InfusionSim.Numerics.Multigrid;

/// <summary>Balances the cells above one another: a tridiagonal system with four right-hand sides.</summary>
internal sealed class ColumnBalance
{
    private readonly double[] _pivot;

    /// <summary>Makes room.</summary>
    /// <param name="layers">Cells above one another.</param>
    public ColumnBalance(int layers)
    {
        Cells = new CellBalance[layers];
        _pivot = new double[layers];
    }

    /// <summary>The cells, the lowest first.</summary>
    public CellBalance[] Cells { get; }

    /// <summary>Replaces couplings by weights.</summary>
    public void Solve()
    {
        for (int layer = 0; layer < Cells.Length; layer++)
        {
            double below = Joint(layer - 1), pivot = Cells[layer].Own + Joint(layer) + below;
            if (below > 0)
            {
                pivot -= below * below / _pivot[layer - 1];
                Cells[layer].Corners += below * Cells[layer - 1].Corners;
            }

            _pivot[layer] = pivot;
            Cells[layer].Corners *= pivot > 0 ? 1 / pivot : 0;
        }

        for (int layer = Cells.Length - 2; layer >= 0; layer--)
        {
            double above = Joint(layer);
            if (above > 0) Cells[layer].Corners += above / _pivot[layer] * Cells[layer + 1].Corners;
        }
    }

    private double Joint(int layer) =>
        layer >= 0 && layer + 1 < Cells.Length && Cells[layer].TakesPart && Cells[layer + 1].TakesPart ? Cells[layer].Above : 0;
}

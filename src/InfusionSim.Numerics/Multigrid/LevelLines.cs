using InfusionSim.Numerics.Lines;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>The line nodes as one grid of the hierarchy sees them: which of its cells they are joined to, and their values and loads there.</summary>
/// <remarks>Line nodes are not coarsened: every grid has all of them, and balances them together after its first sweep and before its last.</remarks>
internal sealed unsafe class LevelLines
{
    private readonly MultigridLevel _level;
    private readonly LineSystem _system;
    private readonly List<(int At, int Node, double Conductance)> _joins = [];
    private readonly List<(int At, float Load)> _kept = [];

    /// <summary>Makes the view of one grid, nothing joined.</summary>
    /// <param name="level">The grid.</param>
    /// <param name="system">The line nodes.</param>
    public LevelLines(MultigridLevel level, LineSystem system)
    {
        _level = level;
        _system = system;
        Value = new double[system.Count];
        Load = new double[system.Count];
    }

    /// <summary>What joins cells and line nodes that take part: where the cell lies, the node, the coupling.</summary>
    public IReadOnlyList<(int At, int Node, double Conductance)> Joins => _joins;

    /// <summary>Values of the line nodes in a cycle.</summary>
    public double[] Value { get; }

    /// <summary>Loads of the line nodes in a cycle; 0 on all grids but the finest.</summary>
    public double[] Load { get; }

    /// <summary>Joins the finest grid's cells and the nodes that are wet.</summary>
    public void JoinFinest()
    {
        _joins.Clear();
        PaddedLayout layout = _level.Layout;
        int inLayer = layout.Columns * layout.Rows;
        foreach ((int cell, int node, double conductance) in _system.Links)
        {
            int at = layout.At(cell % layout.Columns, cell / layout.Columns % layout.Rows, cell / inLayer);
            if (_system.IsWet[node] && _level.Diagonal.Origin[at] > 0) _joins.Add((at, node, conductance));
        }
    }

    /// <summary>Joins this grid's cells to the nodes through the interpolation to the finer grid (Galerkin).</summary>
    /// <param name="fine">The finer grid's view.</param>
    public void JoinCoarse(LevelLines fine)
    {
        Dictionary<(int At, int Node), double> sums = [];
        MultigridLevel level = fine._level;
        (int byColumns, int byRows) = level.Coarsening;
        foreach ((int at, int node, double conductance) in fine._joins)
        {
            (int column, int row, int layer) = level.Layout.CellAt(at);
            int here = _level.Layout.At(column / byColumns, row / byRows, layer), up = _level.Layout.Stride;
            Add(here, level.LowerLeft);
            Add(here + 1, level.LowerRight);
            Add(here + up, level.UpperLeft);
            Add(here + up + 1, level.UpperRight);

            void Add(int coarse, Field<float> weights)
            {
                float weight = weights.Origin[at];
                if (weight != 0) sums[(coarse, node)] = sums.GetValueOrDefault((coarse, node)) + weight * conductance;
            }
        }

        _joins.Clear();
        foreach (((int at, int node), double conductance) in sums) _joins.Add((at, node, conductance));
    }

    /// <summary>Writes how much of each cell's diagonal leads to line nodes.</summary>
    public void WriteLinkSum()
    {
        _level.LinkSum!.Clear();
        foreach ((int at, _, double conductance) in _joins) _level.LinkSum.Origin[at] += (float)conductance;
    }

    /// <summary>Balances the nodes with the cells' values and lets what they give off count as load of the cells.</summary>
    public void BalanceFirst()
    {
        _kept.Clear();
        foreach ((int at, _, _) in _joins) _kept.Add((at, _level.Load.Origin[at]));
        Balance();
    }

    /// <summary>Balances the nodes once more with other values of the cells.</summary>
    public void BalanceAgain()
    {
        RestoreLoads();
        Balance();
    }

    /// <summary>Takes what the nodes give off out of the cells' loads again.</summary>
    public void RestoreLoads()
    {
        foreach ((int at, float load) in _kept) _level.Load.Origin[at] = load;
    }

    private void Balance()
    {
        Load.CopyTo(Value, 0);
        float* x = _level.Value.Origin, load = _level.Load.Origin;
        foreach ((int at, int node, double conductance) in _joins) Value[node] += conductance * x[at];
        _system.Solve(Value);
        foreach ((int at, int node, double conductance) in _joins) load[at] += (float)(conductance * Value[node]);
    }
}

using InfusionSim.Numerics.Lines;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>The line nodes as one grid of the hierarchy sees them: which of its cells they are joined to, and their values and loads there.</summary>
/// <remarks>
/// Line nodes are not coarsened: every grid has all of them. After its first sweep and before its last a grid balances them together with
/// the cells they are joined to: the coarser the grid the more firmly those hang together, and neither could move without the other.
/// </remarks>
internal sealed unsafe class LevelLines
{
    private readonly MultigridLevel _level;
    private readonly LineSystem _system;
    private readonly List<Join> _joins = [];
    private readonly List<(int From, int To, Field<float> Weights)> _parts = [];
    private readonly List<(int From, int To, Field<float> Weights)> _cellParts = [];
    private readonly LevelLines? _finer;
    private readonly int[] _cells;
    private readonly float[] _keptLoads;
    private readonly (int First, int Second, Field<float> Couplings, int At)[] _sides;
    private readonly SparseFactor _factor;
    private readonly double[] _unknowns;
    private readonly double[] _toDry;
    private readonly HashSet<int> _near = [];

    /// <summary>Makes the view of one grid, all cells and line nodes taking part.</summary>
    /// <param name="level">The grid.</param>
    /// <param name="system">The line nodes.</param>
    /// <param name="finer">The view of the next finer grid; null for the finest.</param>
    public LevelLines(MultigridLevel level, LineSystem system, LevelLines? finer)
    {
        _level = level;
        _system = system;
        _finer = finer;
        Value = new double[system.Count];
        Load = new double[system.Count];
        if (finer is null) JoinFinest();
        else JoinCoarse(finer);
        _cells = [.. _joins.Select(static join => join.At).Distinct().Order()];
        _keptLoads = new float[_cells.Length];
        Dictionary<int, int> indexOf = _cells.Select((at, index) => (at, index)).ToDictionary(static pair => pair.at, static pair => pair.index);
        for (int k = 0; k < _joins.Count; k++) _joins[k] = _joins[k] with { Cell = indexOf[_joins[k].At] };
        if (finer is not null)
        {
            foreach ((int from, int to, Field<float> weights) in _parts.DistinctBy(part => (finer._joins[part.From].Cell, _joins[part.To].Cell)))
                _cellParts.Add((finer._joins[from].Cell, _joins[to].Cell, weights));
        }

        _sides = [.. SidesOf(indexOf)];
        (int, int)[] pairs =
        [
            .. system.Joints.Select(static joint => (joint.First, joint.Second)),
            .. _joins.Select(join => (join.Node, system.Count + join.Cell)),
            .. _sides.Select(side => (system.Count + side.First, system.Count + side.Second)),
        ];
        _factor = new SparseFactor(system.Count + _cells.Length, pairs);
        _unknowns = new double[_factor.Count];
        _toDry = new double[_cells.Length];
        foreach (int at in _cells)
        {
            int s = level.Layout.Stride;
            _near.UnionWith([at, at - 1, at - s, at - s - 1, at - s + 1, at - level.Layout.LayerStride]);
        }
    }

    /// <summary>What joins cells and line nodes: where the cell lies, the node, the coupling; 0 while one of them takes no part.</summary>
    public IEnumerable<(int At, int Node, double Conductance)> Joins => _joins.Select(static join => (join.At, join.Node, join.Conductance));

    /// <summary>Values of the line nodes in a cycle.</summary>
    public double[] Value { get; }

    /// <summary>Whether the nodes are held at 0 here instead of being balanced.</summary>
    public bool AreHeld { get; set; }

    /// <summary>Loads of the line nodes in a cycle; 0 on all grids but the finest.</summary>
    public double[] Load { get; }

    /// <summary>Computes the sums of this grid's links from those of the finer grid's cells that take part; before the grid's couplings.</summary>
    public void UpdateLinkSums()
    {
        if (_finer is null) return;
        Field<double> sums = _level.LinkSum!, fine = _finer._level.LinkSum!;
        foreach (int at in _cells) sums.Origin[at] = 0;
        foreach ((int from, int to, Field<float> weights) in _cellParts)
        {
            int at = _finer._cells[from];
            if (_finer._level.Diagonal.Origin[at] > 0) sums.Origin[_cells[to]] += (double)weights.Origin[at] * fine.Origin[at];
        }
    }

    /// <summary>Whether couplings that lead to cells joined to lines are among the grid's changes.</summary>
    public bool IsTouchedByChanges()
    {
        foreach ((int column, int row, int layer) in _level.Changed.Cells)
            if (_near.Contains(_level.Layout.At(column, row, layer))) return true;
        return false;
    }

    /// <summary>Brings what joins cells and nodes up to date.</summary>
    public void UpdateJoins()
    {
        for (int k = 0; k < _joins.Count; k++)
        {
            Join join = _joins[k];
            bool takesPart = _finer is null && _system.IsWet[join.Node] && _level.Diagonal.Origin[join.At] > 0;
            _joins[k] = join with { Conductance = takesPart ? join.Whole : 0 };
        }

        if (_finer is null) return;
        foreach ((int from, int to, Field<float> weights) in _parts)
        {
            Join fine = _finer._joins[from], join = _joins[to];
            _joins[to] = join with { Conductance = join.Conductance + weights.Origin[fine.At] * fine.Conductance };
        }
    }

    /// <summary>Factorises lines and cells together.</summary>
    public void Factorise()
    {
        _factor.Clear();
        _system.WriteTo(_factor);
        for (int cell = 0; cell < _cells.Length; cell++) _factor.SetDiagonal(_system.Count + cell, _level.Diagonal.Origin[_cells[cell]] > 0 ? _level.ExactDiagonal(_cells[cell]) : 0);
        int joint = _system.Joints.Count;
        for (int cell = 0; cell < _cells.Length; cell++) _toDry[cell] = _level.LinkSum!.Origin[_cells[cell]];
        foreach (Join join in _joins)
        {
            _factor.Couple(joint++, join.Conductance);
            _toDry[join.Cell] -= join.Conductance;
        }

        foreach ((int first, int second, Field<float> couplings, int at) in _sides)
        {
            bool both = _level.Diagonal.Origin[_cells[first]] > 0 && _level.Diagonal.Origin[_cells[second]] > 0;
            _factor.Couple(joint++, both ? couplings.Origin[at] : 0);
        }

        _factor.Factorise();
    }

    /// <summary>Balances the nodes and their cells with the other cells' values, and lets what flows from the nodes to the cells count as their load: what is left then is the residual.</summary>
    public void BalanceFirst()
    {
        for (int cell = 0; cell < _cells.Length; cell++) _keptLoads[cell] = _level.Load.Origin[_cells[cell]];
        Balance();
        float* x = _level.Value.Origin, load = _level.Load.Origin;
        foreach (Join join in _joins) load[join.At] += (float)(join.Conductance * (Value[join.Node] - x[join.At]));

        // What leads to dry nodes leads to 0.
        for (int cell = 0; cell < _cells.Length; cell++) load[_cells[cell]] -= (float)(_toDry[cell] * x[_cells[cell]]);
    }

    /// <summary>Balances the nodes and their cells once more with other values, and lets what the nodes offer count as load of the cells, as relaxation needs it.</summary>
    public void BalanceAgain()
    {
        RestoreLoads();
        Balance();
        foreach (Join join in _joins) _level.Load.Origin[join.At] += (float)(join.Conductance * Value[join.Node]);
    }

    /// <summary>Takes what the nodes give off out of the cells' loads again.</summary>
    public void RestoreLoads()
    {
        for (int cell = 0; cell < _cells.Length; cell++) _level.Load.Origin[_cells[cell]] = _keptLoads[cell];
    }

    private void Balance()
    {
        if (AreHeld)
        {
            Array.Clear(Value);
            return;
        }

        Load.CopyTo(_unknowns, 0);
        int lines = _system.Count;
        for (int node = 0; node < lines; node++) if (!_system.IsWet[node]) _unknowns[node] = 0;
        float* x = _level.Value.Origin, load = _level.Load.Origin, diagonal = _level.Diagonal.Origin;
        for (int cell = 0; cell < _cells.Length; cell++) _unknowns[lines + cell] = diagonal[_cells[cell]] > 0 ? load[_cells[cell]] + Inflow(_cells[cell]) : 0;
        foreach ((int first, int second, Field<float> couplings, int at) in _sides)
        {
            _unknowns[lines + first] -= couplings.Origin[at] * x[_cells[second]];
            _unknowns[lines + second] -= couplings.Origin[at] * x[_cells[first]];
        }

        _factor.Solve(_unknowns);
        _unknowns.AsSpan(0, lines).CopyTo(Value);
        for (int cell = 0; cell < _cells.Length; cell++) x[_cells[cell]] = (float)_unknowns[lines + cell];
    }

    private double Inflow(int at)
    {
        int s = _level.Layout.Stride, next = _level.Layout.LayerStride;
        float* x = _level.Value.Origin, e = _level.East.Origin, n = _level.North.Origin;
        double sum = (double)e[at] * x[at + 1] + (double)e[at - 1] * x[at - 1] + (double)n[at] * x[at + s] + (double)n[at - s] * x[at - s];
        if (_level.NorthEast is not null)
        {
            float* ne = _level.NorthEast.Origin, nw = _level.NorthWest!.Origin;
            sum += (double)ne[at] * x[at + s + 1] + (double)ne[at - s - 1] * x[at - s - 1] + (double)nw[at] * x[at + s - 1] + (double)nw[at - s + 1] * x[at - s + 1];
        }

        if (_level.Above is null) return sum;
        if (at + next < next * _level.Layout.Layers) sum += (double)_level.Above.Origin[at] * x[at + next];
        return at >= next ? sum + (double)_level.Above.Origin[at - next] * x[at - next] : sum;
    }

    private IEnumerable<(int First, int Second, Field<float> Couplings, int At)> SidesOf(Dictionary<int, int> indexOf)
    {
        int s = _level.Layout.Stride;
        List<(Field<float>? Couplings, int Step)> ways =
            [(_level.East, 1), (_level.North, s), (_level.NorthEast, s + 1), (_level.NorthWest, s - 1), (_level.Above, _level.Layout.LayerStride)];
        foreach (int at in _cells)
        {
            foreach ((Field<float>? couplings, int step) in ways)
                if (couplings is not null && indexOf.TryGetValue(at + step, out int second)) yield return (indexOf[at], second, couplings, at);
        }
    }

    private void JoinFinest()
    {
        PaddedLayout layout = _level.Layout;
        int inLayer = layout.Columns * layout.Rows;
        foreach ((int cell, int node, double conductance) in _system.Links)
            _joins.Add(new(layout.At(cell % layout.Columns, cell / layout.Columns % layout.Rows, cell / inLayer), node, conductance, conductance, 0));
    }

    /// <summary>Finds the cells of this grid that the interpolation joins to the nodes (Galerkin).</summary>
    private void JoinCoarse(LevelLines fine)
    {
        Dictionary<(int At, int Node), int> known = [];
        MultigridLevel level = fine._level;
        (int byColumns, int byRows) = level.Coarsening;
        for (int from = 0; from < fine._joins.Count; from++)
        {
            (int at, int node) = (fine._joins[from].At, fine._joins[from].Node);
            (int column, int row, int layer) = level.Layout.CellAt(at);
            int here = _level.Layout.At(column / byColumns, row / byRows, layer), up = _level.Layout.Stride;
            Add(here, level.LowerLeft);
            Add(here + 1, level.LowerRight);
            Add(here + up, level.UpperLeft);
            Add(here + up + 1, level.UpperRight);

            void Add(int coarse, Field<float> weights)
            {
                if (weights.Origin[at] == 0) return;
                if (!known.TryGetValue((coarse, node), out int to))
                {
                    known[(coarse, node)] = to = _joins.Count;
                    _joins.Add(new(coarse, node, 0, 0, 0));
                }

                _parts.Add((from, to, weights));
            }
        }
    }

    private readonly record struct Join(int At, int Node, double Whole, double Conductance, int Cell);
}

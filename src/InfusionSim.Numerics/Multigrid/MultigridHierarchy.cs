using InfusionSim.Numerics.Lines;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>Grids from the finest to a handful of cells, and the V-cycle over them that preconditions conjugate gradients.</summary>
/// <remarks>
/// Coarsening in the plane with operator-dependent interpolation and Galerkin operators, after Dendy,
/// J. Comput. Phys. 48 (1982) 366 (from memory); layers and line nodes are kept on every grid. When cells join or leave the
/// finest grid only the couplings that depend on them are computed again.
/// </remarks>
internal sealed class MultigridHierarchy
{
    private const int CoarsestCells = 16;
    private const int CoarsestUnknowns = 48;
    private const int FewestCells = 4;

    private readonly List<MultigridLevel> _levels;
    private readonly List<LevelLines> _lines = [];
    private readonly LineSystem? _lineSystem;
    private readonly CoarsestSolver _coarsest;
    private readonly RowBuffer _buffer;
    private bool _linesChanged;

    /// <summary>Makes the grids and the weights between them, every cell of the finest taking part, and then lets none take part.</summary>
    /// <remarks>Weights are kept when cells leave: a coarse point then acts on what is left of its cells (truncation; Kornhuber, Numer. Math. 69
    /// (1994) 167, from memory).</remarks>
    /// <param name="finest">The finest grid with all its couplings.</param>
    /// <param name="lines">Line nodes; null for none. All are wet here and dry afterwards.</param>
    public MultigridHierarchy(MultigridLevel finest, LineSystem? lines = null)
    {
        _levels = [finest];
        _lineSystem = lines;
        if (lines is not null)
        {
            Array.Fill(lines.IsWet, true);
            _lines.Add(new LevelLines(finest, lines, null));
            _lines[0].UpdateJoins();
        }

        while (!IsCoarsest(_levels[^1].Layout)) AddCoarser(_levels[^1]);
        foreach (MultigridLevel level in _levels)
        {
            level.Diagonal.Clear();
            level.Rest.Clear();
            level.InversePivot.Clear();
            if (level == finest) continue;
            level.Slack.Clear();
            level.RowSum!.Clear();
            level.Lost?.Clear();
            level.Above?.Clear();
            level.East.Clear();
            level.North.Clear();
            level.NorthEast!.Clear();
            level.NorthWest!.Clear();
        }

        _coarsest = new CoarsestSolver(_levels[^1], lines, lines is null ? null : _lines[^1]);
        _buffer = new RowBuffer(2 * finest.Layout.PaddedColumns);
        if (lines is null) return;
        Array.Fill(lines.IsWet, false);
        _linesChanged = true;
    }

    /// <summary>The grids, finest first.</summary>
    public IReadOnlyList<MultigridLevel> Levels => _levels;

    /// <summary>The line nodes beside the finest grid; null for none.</summary>
    public LevelLines? FinestLines => _lines.Count > 0 ? _lines[0] : null;

    /// <summary>Holds the line nodes at 0 on the grids between the finest and the coarsest: slower, but nothing that rounding could turn negative is left.</summary>
    /// <returns>Whether that is new.</returns>
    public bool HoldLinesBetween()
    {
        bool isNew = false;
        for (int k = 1; k + 1 < _lines.Count; k++)
        {
            isNew |= !_lines[k].AreHeld;
            _lines[k].AreHeld = true;
        }

        return isNew;
    }

    /// <summary>Notes that a line node, or a cell joined to one, has become wet or dry.</summary>
    public void MarkLinesChanged() => _linesChanged = true;

    /// <summary>Brings the coarse operators up to date with the cells marked as changed on the finest grid.</summary>
    public void Update()
    {
        if (_linesChanged) _lineSystem?.Factorise();
        for (int k = 0; k < _levels.Count; k++)
        {
            MultigridLevel level = _levels[k];
            if (k + 1 < _levels.Count)
            {
                MultigridLevel coarse = _levels[k + 1];
                coarse.Active.IncludeCoarsened(level.Active, level.Coarsening);
                coarse.Changed.AddDependingOn(level.Changed, level.Coarsening);
                if (coarse.ChangedColumns != coarse.Changed) coarse.ChangedColumns.AddDependingOn(level.ChangedColumns, level.Coarsening);
                if (_linesChanged && _lineSystem is not null) _lines[k + 1].UpdateLinkSums();
                CoarseOperator.Update(level, coarse);
            }

            if (_lineSystem is not null) UpdateLines(_lines[k]);
            ClearChanges(level);
        }

        _coarsest.Factorise(_linesChanged);
        _linesChanged = false;
    }

    /// <summary>One V-cycle from zero: sets the finest Value to an approximate solution for the finest Load.</summary>
    public void Cycle()
    {
        Cycle(0);
        if (_levels.Count > 1 && _lines.Count > 0) _lines[0].RestoreLoads();
    }

    private void Cycle(int k)
    {
        if (k + 1 == _levels.Count)
        {
            _coarsest.Solve();
            return;
        }

        MultigridLevel fine = _levels[k], coarse = _levels[k + 1];
        LevelLines? lines = _lines.Count > 0 ? _lines[k] : null;
        Smoother.SweepUpAndRestrict(fine, coarse, _buffer, lines);
        Cycle(k + 1);
        Smoother.CorrectAndSweepDown(fine, coarse, lines);
    }

    private void AddCoarser(MultigridLevel fine)
    {
        fine.Coarsening = Coarsening.For(fine);
        Interpolation.Compute(fine);
        PaddedLayout layout = fine.Layout;
        (int byColumns, int byRows) = fine.Coarsening;
        PaddedLayout coarseLayout = new((layout.Columns + byColumns - 1) / byColumns, (layout.Rows + byRows - 1) / byRows, layout.Layers);
        MultigridLevel coarse = new(coarseLayout, hasDiagonalNeighbours: true, _lineSystem is not null, isCoarse: true);
        if (_lineSystem is not null)
        {
            LevelLines lines = new(coarse, _lineSystem, _lines[^1]);
            lines.UpdateLinkSums();
            lines.UpdateJoins();
            _lines.Add(lines);
        }

        coarse.Changed.AddAll();
        coarse.ChangedColumns.AddAll();
        CoarseOperator.Update(fine, coarse);
        ClearChanges(coarse);
        _levels.Add(coarse);
    }

    private void UpdateLines(LevelLines lines)
    {
        if (_linesChanged) lines.UpdateJoins();
        if (_linesChanged || lines.IsTouchedByChanges()) lines.Factorise();
    }

    private static void ClearChanges(MultigridLevel level)
    {
        level.Changed.Clear();
        level.ChangedColumns.Clear();
    }

    private static bool IsCoarsest(PaddedLayout layout)
    {
        int cells = layout.Columns * layout.Rows;
        return cells <= CoarsestCells && (cells * layout.Layers <= CoarsestUnknowns || cells <= FewestCells);
    }
}

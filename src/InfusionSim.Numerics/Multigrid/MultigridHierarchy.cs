namespace InfusionSim.Numerics.Multigrid;

/// <summary>Grids from the finest to a handful of cells, and the V-cycle over them that preconditions conjugate gradients.</summary>
/// <remarks>
/// Coarsening by two in both directions with operator-dependent interpolation and Galerkin operators, after Dendy,
/// J. Comput. Phys. 48 (1982) 366 (from memory). When cells join or leave the finest grid only the couplings that
/// depend on them are computed again.
/// </remarks>
internal sealed class MultigridHierarchy
{
    private const int CoarsestCells = 16;

    private readonly CoarsestSolver _coarsest;
    private readonly RowBuffer _buffer;

    /// <summary>Makes the grids; the finest has no couplings yet.</summary>
    /// <param name="columns">Cells in a row of the finest grid.</param>
    /// <param name="rows">Its rows.</param>
    public MultigridHierarchy(int columns, int rows)
    {
        List<MultigridLevel> levels = [new MultigridLevel(columns, rows, hasDiagonalNeighbours: false)];
        while (columns * rows > CoarsestCells)
        {
            columns = (columns + 1) / 2;
            rows = (rows + 1) / 2;
            levels.Add(new MultigridLevel(columns, rows, hasDiagonalNeighbours: true));
        }

        Levels = levels;
        _coarsest = new CoarsestSolver(levels[^1]);
        _buffer = new RowBuffer(2 * levels[0].Layout.PaddedColumns);
    }

    /// <summary>The grids, finest first.</summary>
    public IReadOnlyList<MultigridLevel> Levels { get; }

    /// <summary>Computes the weights of all grids from the finest couplings, every cell taking part, and then lets none take part.</summary>
    /// <remarks>Weights are kept when cells leave: a coarse point then acts on what is left of its cells (truncation; Kornhuber, Numer. Math. 69 (1994) 167, from memory).</remarks>
    public void PrepareWeights()
    {
        for (int k = 0; k + 1 < Levels.Count; k++)
        {
            Interpolation.Compute(Levels[k]);
            Levels[k + 1].Changed.AddAll();
            CoarseOperator.Update(Levels[k], Levels[k + 1], Levels[k + 1].Changed);
            Levels[k + 1].Changed.Clear();
        }

        foreach (MultigridLevel level in Levels)
        {
            level.Diagonal.Clear();
            level.InverseDiagonal.Clear();
            if (level.NorthEast is null) continue;
            level.East.Clear();
            level.North.Clear();
            level.NorthEast.Clear();
            level.NorthWest!.Clear();
        }
    }

    /// <summary>Brings the coarse operators up to date with the cells marked as changed on the finest grid.</summary>
    public void Update()
    {
        for (int k = 0; k + 1 < Levels.Count; k++)
        {
            MultigridLevel fine = Levels[k], coarse = Levels[k + 1];
            coarse.Active.IncludeCoarsened(fine.Active, 1);
            coarse.Changed.AddDependingOn(fine.Changed);
            CoarseOperator.Update(fine, coarse, coarse.Changed);
            fine.Changed.Clear();
        }

        Levels[^1].Changed.Clear();
        _coarsest.Factorise();
    }

    /// <summary>One V-cycle from zero: sets the finest Value to an approximate solution for the finest Load.</summary>
    public void Cycle() => Cycle(0);

    private void Cycle(int k)
    {
        if (k + 1 == Levels.Count)
        {
            _coarsest.Solve();
            return;
        }

        MultigridLevel fine = Levels[k], coarse = Levels[k + 1];
        Smoother.SweepUpAndRestrict(fine, coarse, _buffer);
        Cycle(k + 1);
        Smoother.CorrectAndSweepDown(fine, coarse);
    }
}

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Lines;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Stencils;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>The linear system of the nodes that are wet: which those are, what is not balanced, and corrections to it.</summary>
/// <remarks>
/// Conductances are divided by their mean so that single precision, in which corrections are computed, is far from its
/// limits; residuals are computed in double precision. A dry node holds the value 0.
/// </remarks>
internal sealed unsafe class WetSystem
{
    // Each is checked against the true residual and gains up to seven digits: more than a few are needed only where rounding holds them up.
    private const int CorrectionLimit = 100;

    // Strongly directed cloth takes some sixty cycles for four digits; all else is done within ten.
    private const int CycleLimit = 80;

    // An imbalance below this share of what a cell holds is rounding and wets nothing.
    private const double Rounding = 1e-13;

    // A wide hose could bring many million times what the cloth takes: its conductance says nothing about the flow. Below this share of it rounding in the cells counts.
    private const double LeastGiven = 1e-6;

    // What can take in less than this, but not nothing, was full from the first and stays wet.
    private const double FullBelow = 1e-200, FullAbove = 1e-290;

    private readonly ScaledOperator _operator;
    private readonly MultigridHierarchy _hierarchy;
    private readonly LineLinks _links;
    private readonly SingleOperator _single;
    private readonly ConjugateGradient _inner;
    private readonly LineSystem? _lines;
    private readonly RowSpans _window;
    private readonly NodeField _linkInflow;
    private readonly HashSet<int> _linked = [];

    /// <summary>Makes the system with every node dry.</summary>
    /// <param name="matrix">Conductances; not read again.</param>
    public WetSystem(LatticeOperator matrix)
    {
        _operator = new ScaledOperator(matrix);
        _lines = matrix.LineNodes > 0 ? new LineSystem(matrix, _operator.Scale) : null;
        MultigridLevel finest = _operator.MakeFinestLevel();
        _window = new RowSpans(finest.Layout.Rows, finest.Layout.PaddedColumns, PaddedLayout.Lanes);
        _linkInflow = new(finest.Layout, matrix.LineNodes);
        _links = new LineLinks(_lines, finest.Layout);
        _linked.UnionWith(_links.LinkedCells);
        _hierarchy = new MultigridHierarchy(finest, _lines);
        _single = _operator.MakeSingle(finest);
        _inner = new ConjugateGradient(_hierarchy, _operator, _links);
    }

    /// <summary>What conductances were divided by [the unit of the matrix].</summary>
    public double ConductanceScale => _operator.Scale;

    /// <summary>Where the cells lie.</summary>
    public PaddedLayout Layout => Finest.Layout;

    /// <summary>Number of line nodes [-].</summary>
    public int LineNodes => _lines?.Count ?? 0;

    /// <summary>Where the cells lie that are linked to line nodes.</summary>
    public IReadOnlyCollection<int> LinkedCells => _linked;

    /// <summary>Columns of each row that may hold wet cells in some layer, in whole vectors.</summary>
    public RowSpans Active => Finest.Active;

    /// <summary>Scaled conductances of the cells.</summary>
    public ScaledOperator Operator => _operator;

    private MultigridLevel Finest => _hierarchy.Levels[0];

    /// <summary>Makes a field of zeros for the nodes.</summary>
    public NodeField MakeField() => new(Layout, LineNodes);

    /// <summary>Where a cell lies, counted from cell (0, 0) of the lowest layer.</summary>
    /// <param name="cell">Index of the cell.</param>
    public int AtOf(int cell) => AtOf(Layout, cell);

    /// <summary>Whether a cell is wet.</summary>
    /// <param name="at">Where it lies, counted from cell (0, 0) of the lowest layer.</param>
    public bool IsWet(int at) => Finest.Diagonal.Origin[at] > 0;

    /// <summary>Whether a line node is wet.</summary>
    /// <param name="node">The node, counted from the first line node.</param>
    public bool IsLineWet(int node) => _lines!.IsWet[node];

    /// <summary>Wets or dries a cell.</summary>
    /// <param name="at">Where it lies, counted from cell (0, 0) of the lowest layer.</param>
    /// <param name="wet">Whether it is wet from now on.</param>
    public void SetWet(int at, bool wet)
    {
        if (IsWet(at) == wet) return;
        (int column, int row, int layer) = Layout.CellAt(at);
        Finest.Diagonal.Origin[at] = wet ? _operator.Diagonal.Origin[at] : 0;
        Finest.Rest.Origin[at] = wet ? _operator.Rest.Origin[at] : 0;
        Finest.EliminateColumn(column, row);
        Finest.Value.Origin[at] = 0;
        _inner.Residual.Cells.Origin[at] = 0;
        Finest.Changed.Add(column, row, layer);
        Finest.ChangedColumns.Add(column, row, 0);
        Finest.Active.Include(row, column, column + 1);
        if (_linked.Contains(at)) _hierarchy.MarkLinesChanged();
    }

    /// <summary>Wets or dries a line node.</summary>
    /// <param name="node">The node, counted from the first line node.</param>
    /// <param name="wet">Whether it is wet from now on.</param>
    public void SetLineWet(int node, bool wet)
    {
        if (_lines!.IsWet[node] == wet) return;
        _lines.IsWet[node] = wet;
        _hierarchy.MarkLinesChanged();
    }

    /// <summary>Whether a cell was near enough to a wet one, at the last balance, to exchange anything with it.</summary>
    /// <param name="row">Its row.</param>
    /// <param name="column">Its column.</param>
    public bool IsNearWet(int row, int column) => column >= _window.Start(row) && column < _window.End(row);

    /// <summary>Has every later pass look at a cell, wet or not.</summary>
    /// <param name="at">Where it lies, counted from cell (0, 0) of the lowest layer.</param>
    public void Watch(int at)
    {
        (int column, int row, _) = Layout.CellAt(at);
        Finest.Active.Include(row, column, column + 1);
    }

    /// <summary>Makes <see cref="Outflow"/> count what line nodes give off at some unknowns.</summary>
    /// <param name="x">Unknowns.</param>
    public void ReadLines(NodeField x) => _links.WriteInflow(x, _linkInflow.Cells);

    /// <summary>Net outflow of a cell, (A x) in scaled conductances; <see cref="ReadLines"/> comes first.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="at">Where the cell lies, counted from cell (0, 0) of the lowest layer.</param>
    public double Outflow(NodeField x, int at) => _operator.Outflow(x.Cells, at) - _linkInflow.Cells.Origin[at];

    /// <summary>The load of the line nodes less what flows off to fixed pressures, in scaled conductances.</summary>
    /// <param name="load">Right-hand side.</param>
    /// <param name="x">Unknowns.</param>
    /// <param name="supply">Where it goes, one number per line node.</param>
    public void LineSupply(NodeField load, NodeField x, Span<double> supply) => _links.WriteSupply(load, x, supply);

    /// <summary>What the line nodes receive, load − A x in scaled conductances.</summary>
    /// <param name="load">Right-hand side.</param>
    /// <param name="x">Unknowns.</param>
    /// <param name="receipt">Where it goes, one number per line node.</param>
    public void LineReceipt(NodeField load, NodeField x, Span<double> receipt) => _links.WriteReceipt(load, x, receipt);

    /// <summary>Sets what a newly wet cell is not balanced by, for the next <see cref="Correct"/>.</summary>
    /// <param name="at">Where the cell lies, counted from cell (0, 0) of the lowest layer.</param>
    /// <param name="imbalance">Imbalance.</param>
    public void SetImbalance(int at, double imbalance) => Finest.Load.Origin[at] = (float)imbalance;

    /// <summary>Computes load − held − A x, keeps it for the wet cells as what <see cref="CorrectOnce"/> will balance, and lets dry and wet nodes
    /// change places: a dry node that is offered more than it can hold becomes wet, a wet node that holds nothing and is offered less becomes dry.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="load">Right-hand side.</param>
    /// <param name="held">What a wet node keeps of it.</param>
    /// <param name="carrier">Where the surplus of cells that become wet is noted.</param>
    /// <returns>Sum of the absolute imbalance of the wet nodes, what they can hold in all, and how many nodes changed places.</returns>
    public WetBalance Balance(NodeField x, NodeField load, NodeField held, SurplusCarrier carrier)
    {
        // The front may step out of the present window by as far as the ways reach.
        _window.Clear();
        _window.IncludeAround(Active, _operator.Reach);
        WetBalance balance = default;
        ReadLines(x);
        for (int row = 0; row < Layout.Rows; row++)
        {
            for (int layer = 0; layer < Layout.Layers && _window.Start(row) < _window.End(row); layer++) BalanceRow(row, layer, x, load, held, carrier, ref balance);
        }

        if (_lines is not null) BalanceLines(x, load, held, ref balance);
        return balance;
    }

    /// <summary>Corrects the wet nodes until the imbalance is reduced.</summary>
    /// <param name="x">Unknowns; what falls below 0 becomes 0.</param>
    /// <param name="load">Right-hand side.</param>
    /// <param name="held">What a wet node keeps of it.</param>
    /// <param name="reduction">Wanted reduction of the imbalance.</param>
    /// <param name="cancellation">Stops the iteration between cycles.</param>
    /// <returns>Cycles used.</returns>
    public int Correct(NodeField x, NodeField load, NodeField held, double reduction, CancellationToken cancellation)
    {
        _hierarchy.Update();
        int cycles = _inner.Solve(x, reduction * WriteResidual(x, load, held), CycleLimit, cancellation);
        Add(x, null, 0);
        return cycles;
    }

    /// <summary>Corrects the wet nodes by one cycle for the imbalance that <see cref="Balance"/> found: enough while the wet set still moves.</summary>
    /// <param name="x">Unknowns; what falls below 0 becomes 0.</param>
    /// <param name="load">Right-hand side.</param>
    /// <param name="held">What a wet node keeps of it.</param>
    public void CorrectOnce(NodeField x, NodeField load, NodeField held)
    {
        _hierarchy.Update();
        if (_lines is not null)
        {
            WriteResidual(x, load, held);
            _inner.Solve(x, 0, 1, CancellationToken.None);
            Add(x, null, 0);
            return;
        }

        // One step of steepest descent in single precision, which saves the passes over direction and residual.
        _hierarchy.Cycle();
        (double gain, double curvature) = _single.StepAlongValue();
        if (gain > 0 && curvature > 0) Add(x, Finest.Value, gain / curvature);
    }

    /// <summary>Solves A x = load on the wet nodes, starting from x.</summary>
    /// <param name="x">Unknowns, 0 in dry nodes.</param>
    /// <param name="load">Right-hand side.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to what the nodes are given [-]: cells the right-hand side, line nodes what is left of it once
    /// the part that flows back to fixed pressures is taken off.</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport SolveLinear(NodeField x, NodeField load, double tolerance, CancellationToken cancellation)
    {
        double all = SumOverWet(load), inCells = all;
        if (all == 0) return new(StopReason.Converged, 0, 0, 0);
        for (int node = 0; node < LineNodes; node++) if (_lines!.IsWet[node]) inCells -= Math.Abs(load.Lines[node]);
        double[] supply = new double[LineNodes];
        _hierarchy.Update();
        Patience patience = new(tolerance, CorrectionLimit);
        int cycles = 0;
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            double whole = Math.Max(inCells + LinesGiven(), LeastGiven * all), imbalance = WriteResidual(x, load, null) / whole;
            if (patience.Judge(imbalance, stands: true) is StopReason reason) return new(reason, patience.Corrections, cycles, imbalance);
            cycles += _inner.Solve(x, Patience.Aim * tolerance * whole, CycleLimit, cancellation);
        }

        double LinesGiven()
        {
            LineSupply(load, x, supply);
            double sum = 0;
            for (int node = 0; node < supply.Length; node++) if (_lines!.IsWet[node]) sum += Math.Max(0, supply[node]);
            return sum;
        }
    }

    private static int AtOf(PaddedLayout layout, int cell) =>
        layout.At(cell % layout.Columns, cell / layout.Columns % layout.Rows, cell / (layout.Columns * layout.Rows));

    /// <summary>Adds a multiple of a correction to the cells, if there is one, and lets nothing stay below 0.</summary>
    private void Add(NodeField x, Field<float>? correction, double factor)
    {
        Vector512<double> zero = Vector512<double>.Zero, times = Create(factor);
        for (int layer = 0; layer < Layout.Layers; layer++)
        {
            for (int row = 0; row < Layout.Rows; row++)
            {
                double* value = x.Cells.Row(row, layer);
                float* change = correction is null ? null : correction.Row(row, layer);
                int end = Active.End(row);
                for (int i = Active.Start(row); i < end; i += Vector512<double>.Count)
                    MaxNative(change == null ? Load(value + i) : FusedMultiplyAdd(times, Widen(change + i), Load(value + i)), zero).Store(value + i);
            }
        }

        for (int node = 0; node < LineNodes; node++) if (!(x.Lines[node] > 0)) x.SetLine(node, 0);
    }

    /// <summary>Writes load − held − A x of the wet nodes as the residual of conjugate gradients.</summary>
    /// <returns>Sum of its absolute values.</returns>
    private double WriteResidual(NodeField x, NodeField load, NodeField? held)
    {
        NodeField residual = _inner.Residual;
        ReadLines(x);
        Vector512<double> sum = Vector512<double>.Zero;
        for (int row = 0; row < Layout.Rows; row++)
        {
            int start = Active.Start(row), end = Active.End(row);
            for (int layer = 0; layer < Layout.Layers && start < end; layer++)
            {
                double* given = load.Cells.Row(row, layer), kept = held is null ? null : held.Cells.Row(row, layer), r = residual.Cells.Row(row, layer);
                double* links = _lines is null ? null : _linkInflow.Cells.Row(row, layer);
                float* diagonal = Finest.Diagonal.Row(row, layer);
                RowOutflow outflow = new(_operator, row, layer, x.Cells);
                outflow.Addresses(out double* value, out double* east, out double* north, out double* south, out double* anchor, out int stride);
                bool further = outflow.ReachesFurther;
                for (int i = start; i < end; i += Vector512<double>.Count)
                {
                    Vector512<double> imbalance = Load(given + i) - RowOutflow.ToNeighbours(value + i, east + i, north + i, south + i, anchor + i, stride);
                    if (further) imbalance -= outflow.Further(i);
                    if (kept != null) imbalance -= Load(kept + i);
                    if (links != null) imbalance += Load(links + i);
                    imbalance &= GreaterThan(Widen(diagonal + i), Vector512<double>.Zero);
                    sum += Abs(imbalance);
                    imbalance.Store(r + i);
                }
            }
        }

        double total = Sum(sum);
        LineReceipt(load, x, residual.Lines);
        for (int node = 0; node < LineNodes; node++)
        {
            double imbalance = residual.Lines[node] - (held is null ? 0 : held.Lines[node]);
            residual.Lines[node] = _lines!.IsWet[node] ? imbalance : 0;
            total += Math.Abs(residual.Lines[node]);
        }

        return total;
    }

    private double SumOverWet(NodeField field)
    {
        Vector512<double> sum = Vector512<double>.Zero;
        for (int layer = 0; layer < Layout.Layers; layer++)
        {
            for (int row = 0; row < Layout.Rows; row++)
            {
                double* value = field.Cells.Row(row, layer);
                float* diagonal = Finest.Diagonal.Row(row, layer);
                int end = Active.End(row);
                for (int i = Active.Start(row); i < end; i += Vector512<double>.Count)
                    sum += Abs(Load(value + i)) & GreaterThan(Widen(diagonal + i), Vector512<double>.Zero);
            }
        }

        double total = Sum(sum);
        for (int node = 0; node < LineNodes; node++) if (_lines!.IsWet[node]) total += Math.Abs(field.Lines[node]);
        return total;
    }

    private void BalanceRow(int row, int layer, NodeField x, NodeField load, NodeField held, SurplusCarrier carrier, ref WetBalance balance)
    {
        int at = Layout.At(0, row, layer), end = _window.End(row);
        double* given = load.Cells.Row(row, layer), kept = held.Cells.Row(row, layer);
        double* links = _lines is null ? null : _linkInflow.Cells.Row(row, layer);
        float* diagonal = Finest.Diagonal.Row(row, layer), remainder = Finest.Load.Row(row, layer);
        RowOutflow outflow = new(_operator, row, layer, x.Cells);
        outflow.Addresses(out double* value, out double* east, out double* north, out double* south, out double* anchor, out int stride);
        bool further = outflow.ReachesFurther;
        Vector512<double> zero = Vector512<double>.Zero, sum = zero, holding = zero, noise = Create(Rounding), fullBelow = Create(FullBelow), fullAbove = Create(FullAbove);
        for (int i = _window.Start(row); i < end; i += Vector512<double>.Count)
        {
            Vector512<double> hold = Load(kept + i);
            Vector512<double> imbalance = Load(given + i) - hold - RowOutflow.ToNeighbours(value + i, east + i, north + i, south + i, anchor + i, stride);
            if (further) imbalance -= outflow.Further(i);
            if (links != null) imbalance += Load(links + i);
            Vector512<double> wet = GreaterThan(Widen(diagonal + i), zero);
            Vector512<double> full = LessThan(hold, fullBelow) & GreaterThan(hold, fullAbove);
            Vector512<double> wanted = ((GreaterThan(Load(value + i), zero) | GreaterThan(imbalance, noise * hold)) & GreaterThan(hold, zero)) | full;
            ulong differ = (wanted ^ wet).ExtractMostSignificantBits();
            while (differ != 0)
            {
                int lane = System.Numerics.BitOperations.TrailingZeroCount(differ);
                differ &= differ - 1;
                bool becomesWet = wanted.AsInt64()[lane] != 0;
                SetWet(at + i + lane, becomesWet);
                if (becomesWet) carrier.Add(at + i + lane, imbalance[lane]);
                balance.Changed++;
            }

            imbalance &= wanted;
            sum += Abs(imbalance);
            holding += hold & wanted;
            Vector256.Narrow(imbalance.GetLower(), imbalance.GetUpper()).Store(remainder + i);
        }

        balance.Imbalance += Sum(sum);
        balance.Held += Sum(holding);
    }

    private void BalanceLines(NodeField x, NodeField load, NodeField held, ref WetBalance balance)
    {
        double[] receipt = _linkInflow.Lines;
        LineReceipt(load, x, receipt);
        for (int node = 0; node < receipt.Length; node++)
        {
            double hold = held.Lines[node], imbalance = receipt[node] - hold;
            bool wanted = hold is > FullAbove and < FullBelow || (hold > 0 && (x.Lines[node] > 0 || imbalance > Rounding * hold));
            if (wanted != _lines!.IsWet[node])
            {
                SetLineWet(node, wanted);
                balance.Changed++;
            }

            if (!wanted) continue;
            balance.Imbalance += Math.Abs(imbalance);
            balance.Held += hold;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Widen(float* values) => WidenLower(Create(Vector256.Load(values), Vector256<float>.Zero));
}

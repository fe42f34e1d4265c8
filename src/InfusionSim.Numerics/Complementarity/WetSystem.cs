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
    private const int CorrectionLimit = 100;
    // Strongly directed cloth takes some sixty cycles for four digits; all else is done within ten.
    private const int CycleLimit = 80;

    // An imbalance below this share of what a cell holds is rounding and wets nothing.
    private const double Rounding = 1e-13;

    private readonly ScaledOperator _operator;
    private readonly MultigridHierarchy _hierarchy;
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
        (int, int, double)[] links = _lines is null ? [] : [.. _lines.Links.Select(link => (AtOf(finest.Layout, link.First), link.Second, link.Conductance))];
        foreach ((int at, _, _) in links) _linked.Add(at);
        _hierarchy = new MultigridHierarchy(finest, _lines);
        _inner = new ConjugateGradient(_hierarchy, _operator.MakeSingle(finest, links), _lines);
        Links = links;
    }

    /// <summary>What conductances were divided by [the unit of the matrix].</summary>
    public double ConductanceScale => _operator.Scale;

    /// <summary>Where the cells lie.</summary>
    public PaddedLayout Layout => Finest.Layout;

    /// <summary>Number of line nodes [-].</summary>
    public int LineNodes => _lines?.Count ?? 0;

    /// <summary>What joins cells and line nodes: where the cell lies, the node, the scaled conductance.</summary>
    public IReadOnlyList<(int At, int Node, double Conductance)> Links { get; }

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
        _inner.Correction.Origin[at] = 0;
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
        _inner.LineCorrection[node] = 0;
        _hierarchy.MarkLinesChanged();
    }

    /// <summary>Has every later pass look at a cell, wet or not.</summary>
    /// <param name="at">Where it lies, counted from cell (0, 0) of the lowest layer.</param>
    public void Watch(int at)
    {
        (int column, int row, _) = Layout.CellAt(at);
        Finest.Active.Include(row, column, column + 1);
    }

    /// <summary>Makes <see cref="Outflow"/> count what line nodes give off at some unknowns.</summary>
    /// <param name="x">Unknowns.</param>
    public void ReadLines(NodeField x)
    {
        double* inflow = _linkInflow.Cells.Origin;
        foreach ((int at, _, _) in Links) inflow[at] = 0;
        foreach ((int at, int node, double conductance) in Links) inflow[at] += conductance * (x.Lines[node] - x.Cells.Origin[at]);
    }

    /// <summary>Net outflow of a cell, (A x) in scaled conductances; <see cref="ReadLines"/> comes first.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="at">Where the cell lies, counted from cell (0, 0) of the lowest layer.</param>
    public double Outflow(NodeField x, int at) => _operator.Outflow(x.Cells, at) - _linkInflow.Cells.Origin[at];

    /// <summary>Net outflow of a line node, (A x) in scaled conductances.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="outflow">Where the outflow of each line node goes.</param>
    public void LineOutflow(NodeField x, Span<double> outflow)
    {
        for (int node = 0; node < LineNodes; node++) outflow[node] = _lines!.Anchor[node] * x.Lines[node];
        if (_lines is null) return;
        foreach ((int first, int second, double conductance) in _lines.Joints)
        {
            double flow = conductance * (x.Lines[first] - x.Lines[second]);
            outflow[first] += flow;
            outflow[second] -= flow;
        }

        foreach ((int at, int node, double conductance) in Links) outflow[node] += conductance * (x.Lines[node] - x.Cells.Origin[at]);
    }

    /// <summary>Sets what a newly wet cell is not balanced by, for the next <see cref="Correct"/>.</summary>
    /// <param name="at">Where the cell lies, counted from cell (0, 0) of the lowest layer.</param>
    /// <param name="imbalance">Imbalance.</param>
    public void SetImbalance(int at, double imbalance) => Finest.Load.Origin[at] = (float)imbalance;

    /// <summary>Computes load − held − A x, keeps it for the wet nodes as what <see cref="Correct"/> will balance, and lets dry and wet nodes change places where asked.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="load">Right-hand side.</param>
    /// <param name="held">What a wet node keeps of it; null for nothing.</param>
    /// <param name="changePlaces">When given, a dry node that is offered more than it can hold becomes wet and its surplus is noted here, and a wet node that holds nothing and is offered less becomes dry; when null, all stay as they are.</param>
    /// <returns>Sum of the absolute imbalance of the wet nodes, what they can hold in all, and how many nodes changed places.</returns>
    public WetBalance Balance(NodeField x, NodeField load, NodeField? held, SurplusCarrier? changePlaces)
    {
        RowSpans span = Active;
        if (changePlaces is not null)
        {
            // The front may step out of the present window by as far as the ways reach.
            _window.Clear();
            _window.IncludeAround(Active, _operator.Reach);
            span = _window;
        }

        WetBalance balance = default;
        ReadLines(x);
        for (int row = 0; row < Layout.Rows; row++)
        {
            int start = span.Start(row), end = span.End(row);
            if (start >= end) continue;
            for (int layer = 0; layer < Layout.Layers; layer++) BalanceRow(row, layer, start, end, x, load, held, changePlaces, ref balance);
        }

        if (_lines is not null) BalanceLines(x, load, held, changePlaces, ref balance);
        return balance;
    }

    /// <summary>Corrects the wet nodes for the imbalance found last.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="reduction">Wanted reduction of the imbalance.</param>
    /// <param name="keepPositive">Whether what falls below 0 becomes 0.</param>
    /// <param name="cancellation">Stops the iteration between cycles.</param>
    /// <returns>Cycles used.</returns>
    public int Correct(NodeField x, double reduction, bool keepPositive, CancellationToken cancellation)
    {
        _hierarchy.Update();
        int cycles = _inner.Solve(reduction, CycleLimit, cancellation);
        Add(x, _inner.Correction, _inner.LineCorrection, 1, keepPositive);
        return cycles;
    }

    /// <summary>Corrects the wet nodes by one cycle for the imbalance found last.</summary>
    /// <param name="x">Unknowns; what falls below 0 becomes 0.</param>
    public void CorrectOnce(NodeField x)
    {
        _hierarchy.Update();
        float step = _inner.StepAlongOneCycle();
        if (step > 0) Add(x, Finest.Value, _hierarchy.FinestLines?.Value ?? [], step, keepPositive: true);
    }

    /// <summary>Solves A x = load on the wet nodes, starting from x.</summary>
    /// <param name="x">Unknowns, 0 in dry nodes.</param>
    /// <param name="load">Right-hand side.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to the sum of the right-hand side [-].</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport SolveLinear(NodeField x, NodeField load, double tolerance, CancellationToken cancellation)
    {
        double whole = SumOverWet(load);
        if (whole == 0) return new(StopReason.Converged, 0, 0, 0);
        Patience patience = new(tolerance, CorrectionLimit);
        int cycles = 0;
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            double imbalance = Balance(x, load, null, null).Imbalance / whole;
            if (patience.Judge(imbalance, stands: true) is StopReason reason) return new(reason, patience.Corrections, cycles, imbalance);
            cycles += Correct(x, patience.Reduction(imbalance), keepPositive: false, cancellation);
        }
    }

    private static int AtOf(PaddedLayout layout, int cell) =>
        layout.At(cell % layout.Columns, cell / layout.Columns % layout.Rows, cell / (layout.Columns * layout.Rows));

    private void Add(NodeField x, Field<float> correction, double[] lineCorrection, float factor, bool keepPositive)
    {
        double least = keepPositive ? 0 : double.NegativeInfinity;
        Vector512<double> floor = Create(least), times = Create((double)factor);
        for (int layer = 0; layer < Layout.Layers; layer++)
        {
            for (int row = 0; row < Layout.Rows; row++)
            {
                double* value = x.Cells.Row(row, layer);
                float* change = correction.Row(row, layer);
                int end = Active.End(row);
                for (int i = Active.Start(row); i < end; i += Vector512<double>.Count)
                    MaxNative(FusedMultiplyAdd(times, Widen(change + i), Load(value + i)), floor).Store(value + i);
            }
        }

        for (int node = 0; node < LineNodes; node++) x.Lines[node] = Math.Max(x.Lines[node] + factor * lineCorrection[node], least);
    }

    private double SumOverWet(NodeField field)
    {
        double total = 0;
        for (int layer = 0; layer < Layout.Layers; layer++)
        {
            for (int row = 0; row < Layout.Rows; row++)
            {
                double* value = field.Cells.Row(row, layer);
                float* diagonal = Finest.Diagonal.Row(row, layer);
                for (int i = Active.Start(row); i < Active.End(row); i++) if (diagonal[i] > 0) total += Math.Abs(value[i]);
            }
        }

        for (int node = 0; node < LineNodes; node++) if (_lines!.IsWet[node]) total += Math.Abs(field.Lines[node]);
        return total;
    }

    private void BalanceRow(int row, int layer, int start, int end, NodeField x, NodeField load, NodeField? held, SurplusCarrier? changePlaces, ref WetBalance balance)
    {
        int at = Layout.At(0, row, layer);
        double* given = load.Cells.Row(row, layer), kept = held is null ? null : held.Cells.Row(row, layer);
        double* links = _lines is null ? null : _linkInflow.Cells.Row(row, layer);
        float* diagonal = Finest.Diagonal.Row(row, layer), remainder = Finest.Load.Row(row, layer);
        RowOutflow outflow = new(_operator, row, layer, x.Cells);
        Vector512<double> zero = Vector512<double>.Zero, sum = zero, holding = zero, noise = Create(Rounding);
        for (int i = start; i < end; i += Vector512<double>.Count)
        {
            Vector512<double> hold = kept == null ? zero : Load(kept + i);
            Vector512<double> imbalance = Load(given + i) - hold - outflow.At(i);
            if (links != null) imbalance += Load(links + i);
            Vector512<double> wet = GreaterThan(Widen(diagonal + i), zero);
            if (changePlaces is not null)
            {
                Vector512<double> wanted = (GreaterThan(outflow.Here(i), zero) | GreaterThan(imbalance, noise * hold)) & GreaterThan(hold, zero);
                ulong differ = (wanted ^ wet).ExtractMostSignificantBits();
                while (differ != 0)
                {
                    int lane = System.Numerics.BitOperations.TrailingZeroCount(differ);
                    differ &= differ - 1;
                    bool becomesWet = wanted.AsInt64()[lane] != 0;
                    SetWet(at + i + lane, becomesWet);
                    if (becomesWet) changePlaces.Add(at + i + lane, imbalance[lane]);
                    balance.Changed++;
                }

                wet = wanted;
            }

            imbalance &= wet;
            sum += Abs(imbalance);
            holding += hold & wet;
            Vector256.Narrow(imbalance.GetLower(), imbalance.GetUpper()).Store(remainder + i);
        }

        balance.Imbalance += Sum(sum);
        balance.Held += Sum(holding);
    }

    private void BalanceLines(NodeField x, NodeField load, NodeField? held, SurplusCarrier? changePlaces, ref WetBalance balance)
    {
        double[] remainder = _hierarchy.FinestLines!.Load;
        LineOutflow(x, remainder);
        for (int node = 0; node < remainder.Length; node++)
        {
            double hold = held is null ? 0 : held.Lines[node], imbalance = load.Lines[node] - hold - remainder[node];
            if (changePlaces is not null)
            {
                bool wanted = hold > 0 && (x.Lines[node] > 0 || imbalance > Rounding * hold);
                if (wanted != _lines!.IsWet[node])
                {
                    SetLineWet(node, wanted);
                    balance.Changed++;
                }
            }

            remainder[node] = _lines!.IsWet[node] ? imbalance : 0;
            balance.Imbalance += Math.Abs(remainder[node]);
            if (_lines.IsWet[node]) balance.Held += hold;
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Widen(float* values) => WidenLower(Create(Vector256.Load(values), Vector256<float>.Zero));
}

using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Stencils;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>The linear system of the cells that are wet: which cells those are, what is not balanced, and corrections to it.</summary>
/// <remarks>
/// Conductances are divided by their mean so that single precision, in which corrections are computed, is far from its
/// limits; residuals are computed in double precision. A dry cell holds the value 0.
/// </remarks>
internal sealed unsafe class WetSystem
{
    private const int CorrectionLimit = 100;
    private const int CycleLimit = 12;

    private readonly Field<float> _fullDiagonal;
    private readonly Field<double> _east, _north, _anchor;
    private readonly MultigridHierarchy _hierarchy;
    private readonly ConjugateGradient _inner;
    private readonly RowSpans _window;

    /// <summary>Makes the system with every cell dry.</summary>
    /// <param name="matrix">Conductances; not read again.</param>
    public WetSystem(LatticeOperator matrix)
    {
        _hierarchy = new MultigridHierarchy(matrix.Columns, matrix.Rows);
        MultigridLevel finest = Finest;
        PaddedLayout layout = finest.Layout;
        _east = new(layout);
        _north = new(layout);
        _anchor = new(layout);
        _fullDiagonal = new(layout);
        _window = new RowSpans(layout.Rows, layout.PaddedColumns, PaddedLayout.Lanes);

        double total = 0;
        int coupled = 0;
        for (int cell = 0; cell < matrix.CellCount; cell++)
        {
            if (!(matrix.East[cell] >= 0 && matrix.North[cell] >= 0 && matrix.Anchor[cell] >= 0))
                throw new ArgumentOutOfRangeException(nameof(matrix), $"Cell {cell} has a conductance below 0 or not a number: {matrix.East[cell]}, {matrix.North[cell]}, {matrix.Anchor[cell]}.");
            double conductance = matrix.East[cell] + matrix.North[cell];
            if (conductance == 0) continue;
            total += conductance;
            coupled++;
        }

        ConductanceScale = coupled > 0 ? total / coupled : Math.Max(matrix.Anchor.Max(), double.Epsilon);
        Field<float> anchor = new(layout);
        for (int row = 0; row < layout.Rows; row++)
        {
            for (int column = 0; column < layout.Columns; column++)
            {
                int cell = row * layout.Columns + column, at = layout.At(column, row);
                _east.Origin[at] = matrix.East[cell] / ConductanceScale;
                _north.Origin[at] = matrix.North[cell] / ConductanceScale;
                _anchor.Origin[at] = matrix.Anchor[cell] / ConductanceScale;
                finest.East.Origin[at] = (float)_east.Origin[at];
                finest.North.Origin[at] = (float)_north.Origin[at];
                anchor.Origin[at] = (float)_anchor.Origin[at];
                _fullDiagonal.Origin[at] = (float)(matrix.DiagonalOf(cell) / ConductanceScale);
            }
        }

        for (int row = 0; row < layout.Rows; row++)
        {
            new Span<float>(_fullDiagonal.Row(row), layout.Columns).CopyTo(new Span<float>(finest.Diagonal.Row(row), layout.Columns));
        }

        _hierarchy.PrepareWeights();
        _inner = new ConjugateGradient(_hierarchy, anchor);
    }

    /// <summary>What conductances were divided by [the unit of the matrix].</summary>
    public double ConductanceScale { get; }

    /// <summary>Where the cells lie.</summary>
    public PaddedLayout Layout => Finest.Layout;

    /// <summary>Correction of the last call of <see cref="Correct"/>.</summary>
    public Field<float> Correction => _inner.Correction;

    /// <summary>Columns of each row that may hold wet cells, in whole vectors.</summary>
    public RowSpans Active => Finest.Active;

    private MultigridLevel Finest => _hierarchy.Levels[0];

    /// <summary>Whether a cell is wet.</summary>
    /// <param name="at">Where it lies, counted from cell (0, 0).</param>
    public bool IsWet(int at) => Finest.Diagonal.Origin[at] > 0;

    /// <summary>Wets or dries a cell.</summary>
    /// <param name="column">Column.</param>
    /// <param name="row">Row.</param>
    /// <param name="wet">Whether it is wet from now on.</param>
    public void SetWet(int column, int row, bool wet)
    {
        float diagonal = wet ? _fullDiagonal.Row(row)[column] : 0;
        if (Finest.Diagonal.Row(row)[column] == diagonal) return;
        Finest.Diagonal.Row(row)[column] = diagonal;
        Finest.InverseDiagonal.Row(row)[column] = diagonal > 0 ? 1 / diagonal : 0;
        Finest.Value.Row(row)[column] = 0;
        _inner.Correction.Row(row)[column] = 0;
        Finest.Changed.Add(column, row);
        Finest.Active.Include(row, column, column + 1);
    }

    /// <summary>Has every later pass look at a cell, wet or not.</summary>
    /// <param name="column">Column.</param>
    /// <param name="row">Row.</param>
    public void Watch(int column, int row) => Finest.Active.Include(row, column, column + 1);

    /// <summary>Net outflow of a cell, (A x) in scaled conductances.</summary>
    /// <param name="x">Address of the cell's value.</param>
    /// <param name="at">Where it lies, counted from cell (0, 0).</param>
    public double Outflow(double* x, int at)
    {
        int s = Layout.Stride;
        double here = x[0];
        return _anchor.Origin[at] * here
            + _east.Origin[at] * (here - x[1]) + _east.Origin[at - 1] * (here - x[-1])
            + _north.Origin[at] * (here - x[s]) + _north.Origin[at - s] * (here - x[-s]);
    }

    /// <summary>Scaled conductance to the right neighbour.</summary>
    public Field<double> East => _east;

    /// <summary>Scaled conductance to the upper neighbour.</summary>
    public Field<double> North => _north;

    /// <summary>Sets what <see cref="Correct"/> will balance in one cell.</summary>
    /// <param name="at">Where it lies, counted from cell (0, 0).</param>
    /// <param name="imbalance">Imbalance.</param>
    public void SetImbalance(int at, double imbalance) => Finest.Load.Origin[at] = (float)imbalance;

    /// <summary>Computes a·supply + c·capacity − A x, keeps it for the wet cells as what <see cref="Correct"/> will balance, and lets the dry and wet cells change places where asked.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="supply">First part of the right-hand side.</param>
    /// <param name="supplyFactor">Its factor a.</param>
    /// <param name="capacity">Second part of the right-hand side.</param>
    /// <param name="capacityFactor">Its factor c.</param>
    /// <param name="changePlaces">When given, a dry cell that is offered more than it can hold becomes wet and its surplus is noted here, and a wet cell that holds nothing and is offered less becomes dry; when null, all stay as they are.</param>
    /// <param name="changed">How many cells changed places.</param>
    /// <returns>Sum of the absolute imbalance of the wet cells, and what they can hold in all.</returns>
    public (double Imbalance, double WetCapacity) Balance(
        Field<double> x, Field<double> supply, double supplyFactor, Field<double> capacity, double capacityFactor, SurplusCarrier? changePlaces, out int changed)
    {
        changed = 0;
        RowSpans span = Active;
        if (changePlaces is not null)
        {
            // The front may step out of the present window by one cell.
            _window.Clear();
            _window.IncludeAround(Active, 1);
            span = _window;
        }

        double imbalance = 0, wetCapacity = 0;
        for (int row = 0; row < Layout.Rows; row++)
        {
            int start = span.Start(row), end = span.End(row);
            if (start >= end) continue;
            (double rowImbalance, double rowCapacity) = BalanceRow(row, start, end, x, supply, supplyFactor, capacity, capacityFactor, changePlaces, ref changed);
            imbalance += rowImbalance;
            wetCapacity += rowCapacity;
        }

        return (imbalance, wetCapacity);
    }

    /// <summary>Computes a correction of the wet cells from the imbalance found last.</summary>
    /// <param name="reduction">Wanted reduction of the imbalance.</param>
    /// <param name="limit">Most cycles.</param>
    /// <param name="cancellation">Stops the iteration between cycles.</param>
    /// <returns>Cycles used.</returns>
    public int Correct(double reduction, int limit, CancellationToken cancellation)
    {
        _hierarchy.Update();
        return _inner.Solve(reduction, limit, cancellation);
    }

    /// <summary>Solves A x = a·supply + c·capacity on the wet cells, starting from x.</summary>
    /// <param name="x">Unknowns, 0 in dry cells.</param>
    /// <param name="supply">First part of the right-hand side.</param>
    /// <param name="supplyFactor">Its factor a.</param>
    /// <param name="capacity">Second part of the right-hand side.</param>
    /// <param name="capacityFactor">Its factor c.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to the sum of the right-hand side [-].</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport SolveLinear(
        Field<double> x, Field<double> supply, double supplyFactor, Field<double> capacity, double capacityFactor, double tolerance, CancellationToken cancellation)
    {
        double whole = SumOverWet(supply) * Math.Abs(supplyFactor) + SumOverWet(capacity) * Math.Abs(capacityFactor);
        if (whole == 0) return new(StopReason.Converged, 0, 0, 0);
        double best = double.PositiveInfinity;
        int cycles = 0, idle = 0;
        for (int correction = 0; ; correction++)
        {
            cancellation.ThrowIfCancellationRequested();
            double imbalance = Balance(x, supply, supplyFactor, capacity, capacityFactor, null, out _).Imbalance / whole;
            if (imbalance <= tolerance) return new(StopReason.Converged, correction, cycles, imbalance);
            if (imbalance >= 0.5 * best && ++idle >= 3) return new(StopReason.Stagnated, correction, cycles, imbalance);
            if (correction == CorrectionLimit) return new(StopReason.IterationLimit, correction, cycles, imbalance);
            best = Math.Min(best, imbalance);
            cycles += Correct(Math.Max(0.3 * tolerance / imbalance, 1e-4), CycleLimit, cancellation);
            AddCorrection(x, keepPositive: false);
        }
    }

    /// <summary>Adds the last correction to the unknowns.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="keepPositive">Whether what falls below 0 becomes 0.</param>
    public void AddCorrection(Field<double> x, bool keepPositive)
    {
        Vector512<double> floor = Create(keepPositive ? 0 : double.NegativeInfinity);
        for (int row = 0; row < Layout.Rows; row++)
        {
            double* value = x.Row(row);
            float* correction = Correction.Row(row);
            int end = Active.End(row);
            for (int i = Active.Start(row); i < end; i += Vector512<double>.Count)
                MaxNative(Load(value + i) + Widen(correction + i), floor).Store(value + i);
        }
    }

    private double SumOverWet(Field<double> field)
    {
        double total = 0;
        for (int row = 0; row < Layout.Rows; row++)
        {
            double* value = field.Row(row);
            float* diagonal = Finest.Diagonal.Row(row);
            for (int i = Active.Start(row); i < Active.End(row); i++) if (diagonal[i] > 0) total += value[i];
        }

        return total;
    }

    private (double Imbalance, double WetCapacity) BalanceRow(
        int row, int start, int end, Field<double> unknowns, Field<double> supply, double supplyFactor, Field<double> capacity, double capacityFactor, SurplusCarrier? changePlaces, ref int changed)
    {
        int stride = Layout.Stride;
        double* x = unknowns.Row(row), s = supply.Row(row), c = capacity.Row(row);
        double* east = _east.Row(row), north = _north.Row(row), south = _north.Row(row - 1), anchor = _anchor.Row(row);
        float* diagonal = Finest.Diagonal.Row(row), load = Finest.Load.Row(row);
        Vector512<double> a = Create(supplyFactor), b = Create(capacityFactor), zero = Vector512<double>.Zero;
        Vector512<double> sum = zero, held = zero;
        Vector512<double> noise = Create(1e-13);
        for (int i = start; i < end; i += Vector512<double>.Count)
        {
            Vector512<double> here = Load(x + i), hold = Load(c + i);
            Vector512<double> outflow = FusedMultiplyAdd(Load(east + i), here - Load(x + i + 1), Load(anchor + i) * here);
            Vector512<double> other = Load(east + i - 1) * (here - Load(x + i - 1));
            outflow = FusedMultiplyAdd(Load(north + i), here - Load(x + i + stride), outflow);
            other = FusedMultiplyAdd(Load(south + i), here - Load(x + i - stride), other);
            Vector512<double> imbalance = FusedMultiplyAdd(a, Load(s + i), b * hold) - (outflow + other);
            Vector512<double> wet = GreaterThan(Widen(diagonal + i), zero);
            if (changePlaces is not null)
            {
                Vector512<double> wanted = (GreaterThan(here, zero) | GreaterThan(imbalance, noise * hold)) & GreaterThan(hold, zero);
                ulong differ = (wanted ^ wet).ExtractMostSignificantBits();
                while (differ != 0)
                {
                    int lane = System.Numerics.BitOperations.TrailingZeroCount(differ);
                    differ &= differ - 1;
                    bool becomesWet = wanted.AsInt64()[lane] != 0;
                    SetWet(i + lane, row, becomesWet);
                    if (becomesWet) changePlaces.Add(i + lane, row, imbalance[lane]);
                    changed++;
                }

                wet = wanted;
            }

            imbalance &= wet;
            sum += Abs(imbalance);
            held += hold & wet;
            Vector256.Narrow(imbalance.GetLower(), imbalance.GetUpper()).Store(load + i);
        }

        return (Sum(sum), Sum(held));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector512<double> Widen(float* values) => WidenLower(Create(Vector256.Load(values), Vector256<float>.Zero));
}

using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Stencils;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Which cells are full, and how full the others, when a supply has been offered for a while: the linear complementarity problem w ≥ 0, C − (θ s − A w) ≥ 0, w·(C − (θ s − A w)) = 0.</summary>
/// <remarks>
/// C is what a cell can hold, θ the clock, s the supply per unit of clock (conductance to feeds times their pressure),
/// w the accumulated pressure. The solution is the state at θ of a scheme that fills cell after cell with exact
/// steps in time, because what a dry cell has taken in never decreases; no step in time is needed to reach it.
/// It holds only if all conductances are at least 0, the supply does not decrease, and dry cells and open ends share
/// one pressure. Source of the transform: Elliott and Janovský, Proc. R. Soc. Edinburgh A 88 (1981) 93 (from memory).
/// Method: the wet set is corrected and the wet cells are relaxed in turn (primal-dual active sets, Hintermüller, Ito
/// and Kunisch, SIAM J. Optim. 13 (2002) 865, from memory), truncated: the linear system of each set is solved only
/// as far as is worth while until the set stands still. One instance serves one thread.
/// </remarks>
public sealed unsafe class ObstacleSolver
{
    private const int CorrectionLimit = 400;
    private const int CycleLimit = 8;

    private readonly WetSystem _system;
    private readonly Field<double> _capacity, _supply, _extra, _extraRate, _offer, _accumulated, _previous, _pressure;
    private readonly SurplusCarrier _carrier;
    private readonly double _capacityScale;
    private double _clock, _previousClock;

    /// <summary>Makes a solver with every cell dry.</summary>
    /// <param name="matrix">Conductances between cells and to fixed pressures; every group of cells with capacity must have a way to a fixed pressure.</param>
    /// <param name="capacity">What each cell can hold, C [unit of volume]; 0 for a cell that takes no part. [rows × columns], x fastest.</param>
    /// <param name="supply">Supply per unit of clock, s [unit of conductance], at least 0. [rows × columns], x fastest.</param>
    /// <exception cref="ArgumentOutOfRangeException">When a conductance, a capacity or a supply is below 0 or not a number: the conditions under which one solution is the state.</exception>
    public ObstacleSolver(LatticeOperator matrix, ReadOnlySpan<double> capacity, ReadOnlySpan<double> supply)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        if (capacity.Length != matrix.CellCount) throw new ArgumentException($"The matrix has {matrix.CellCount} cells; the capacity has {capacity.Length}.", nameof(capacity));
        if (supply.Length != matrix.CellCount) throw new ArgumentException($"The matrix has {matrix.CellCount} cells; the supply has {supply.Length}.", nameof(supply));
        _system = new WetSystem(matrix);
        _capacity = new(_system.Layout);
        _supply = new(_system.Layout);
        _extra = new(_system.Layout);
        _extraRate = new(_system.Layout);
        _offer = new(_system.Layout);
        _accumulated = new(_system.Layout);
        _pressure = new(_system.Layout);
        _previous = new(_system.Layout);
        _carrier = new SurplusCarrier(_system, _capacity);

        double total = 0;
        int holding = 0;
        foreach (double volume in capacity)
        {
            if (!(volume >= 0)) throw new ArgumentOutOfRangeException(nameof(capacity), volume, "A cell cannot hold less than nothing.");
            if (volume == 0) continue;
            total += volume;
            holding++;
        }

        _capacityScale = holding > 0 ? total / holding : 1;
        double[] scaled = new double[matrix.CellCount];
        for (int cell = 0; cell < scaled.Length; cell++) scaled[cell] = capacity[cell] / _capacityScale;
        _capacity.CopyFrom(scaled);
        for (int cell = 0; cell < scaled.Length; cell++)
        {
            if (!(supply[cell] >= 0)) throw new ArgumentOutOfRangeException(nameof(supply), supply[cell], "A supply that takes back would dry full cells, which this solution does not cover.");
            scaled[cell] = capacity[cell] > 0 ? supply[cell] / _system.ConductanceScale : 0;
            if (scaled[cell] > 0) _system.Watch(cell % matrix.Columns, cell / matrix.Columns);
        }

        _supply.CopyFrom(scaled);
    }

    /// <summary>One scaled unit of accumulated pressure and clock [unit of clock].</summary>
    private double ClockScale => _capacityScale / _system.ConductanceScale;

    /// <summary>Sets what each node is offered on top of supply times clock, as by its weight, from the next state on.</summary>
    /// <remarks>The state stays the one of a fill only as long as what a dry node has been offered never decreases; that is the caller's to see to.</remarks>
    /// <param name="volume">Volume offered up to the clock of the next state [unit of volume], of either sign. [nodes].</param>
    /// <param name="rate">How fast that volume grows with the clock then [unit of conductance], for the pressure. [nodes].</param>
    public void SetExtra(ReadOnlySpan<double> volume, ReadOnlySpan<double> rate)
    {
        double[] scaled = new double[volume.Length];
        for (int node = 0; node < scaled.Length; node++) scaled[node] = volume[node] / _capacityScale;
        _extra.CopyFrom(scaled);
        for (int node = 0; node < scaled.Length; node++) scaled[node] = rate[node] / _system.ConductanceScale;
        _extraRate.CopyFrom(scaled);
    }

    /// <summary>Finds the state at a value of the clock, starting from the state found last.</summary>
    /// <param name="clock">Clock θ [-], at least 0; may be earlier than the last.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to what the wet cells hold [-].</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport Solve(double clock, double tolerance, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(clock);
        double scaledClock = clock / ClockScale;
        Predict(scaledClock);
        SetOffer(_supply, scaledClock, _extra);
        int cycles = 0;
        double best = double.PositiveInfinity;
        int idle = 0;
        for (int correction = 0; ; correction++)
        {
            cancellation.ThrowIfCancellationRequested();
            (double imbalance, double wetCapacity) = _system.Balance(_accumulated, _offer, 1, _capacity, -1, _carrier, out int changed);
            imbalance /= Math.Max(wetCapacity, double.Epsilon);
            if (changed == 0 && imbalance <= tolerance) return new(StopReason.Converged, correction, cycles, imbalance);
            if (changed == 0 && imbalance >= 0.5 * best && ++idle >= 3) return new(StopReason.Stagnated, correction, cycles, imbalance);
            if (changed == 0) best = Math.Min(best, imbalance);
            if (correction == CorrectionLimit) return new(StopReason.IterationLimit, correction, cycles, imbalance);
            _carrier.HandOn();
            cycles += changed > 0
                ? _system.Correct(0.1, 1, cancellation)
                : _system.Correct(Math.Max(0.3 * tolerance / imbalance, 1e-4), CycleLimit, cancellation);
            _system.AddCorrection(_accumulated, keepPositive: true);
        }
    }

    /// <summary>Finds the pressure at the clock of the last state: how fast the accumulated pressure rises.</summary>
    /// <param name="tolerance">Largest sum of imbalances relative to the supply [-].</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport SolvePressure(double tolerance, CancellationToken cancellation = default)
    {
        KeepOnlyWet(_pressure);
        SetOffer(_supply, 1, _extraRate);
        SolveReport report = _system.SolveLinear(_pressure, _offer, 1, _capacity, 0, tolerance, cancellation);
        SetOffer(_supply, _clock, _extra);
        return report;
    }

    /// <summary>Copies the accumulated pressure w of the last state [unit of clock]; 0 where a cell is not full. [rows × columns], x fastest.</summary>
    /// <param name="target">Where to [unit of clock], as many as there are cells.</param>
    public void CopyAccumulatedPressure(Span<double> target)
    {
        _accumulated.CopyTo(target);
        for (int cell = 0; cell < target.Length; cell++) target[cell] *= ClockScale;
    }

    /// <summary>Copies the pressure found last [unit of the feeds' pressures]; 0 where a cell is not full. [rows × columns], x fastest.</summary>
    /// <param name="target">Where to [unit of the feeds' pressures], as many as there are cells.</param>
    public void CopyPressure(Span<double> target) => _pressure.CopyTo(target);

    /// <summary>Copies how full each cell is in the last state [-], 0 to 1; 0 for a cell that takes no part. [rows × columns], x fastest.</summary>
    /// <param name="target">Where to [-], as many as there are cells.</param>
    public void CopySaturation(Span<double> target)
    {
        PaddedLayout layout = _system.Layout;
        for (int row = 0; row < layout.Rows; row++)
        {
            for (int column = 0; column < layout.Columns; column++)
            {
                int at = layout.At(column, row);
                double capacity = _capacity.Origin[at];
                double share = 0;
                if (capacity > 0)
                    share = _accumulated.Origin[at] > 0 ? 1 : (_offer.Origin[at] - _system.Outflow(_accumulated.Origin + at, at)) / capacity;
                target[row * layout.Columns + column] = Math.Clamp(share, 0, 1);
            }
        }
    }

    private void SetOffer(Field<double> supply, double factor, Field<double> extra)
    {
        for (int row = 0; row < _system.Layout.Rows; row++)
        {
            double* s = supply.Row(row), e = extra.Row(row), offer = _offer.Row(row);
            for (int i = 0; i < _system.Layout.PaddedColumns; i += Vector512<double>.Count)
                FusedMultiplyAdd(Create(factor), Load(s + i), Load(e + i)).Store(offer + i);
        }
    }

    private void KeepOnlyWet(Field<double> field)
    {
        PaddedLayout layout = _system.Layout;
        for (int row = 0; row < layout.Rows; row++)
        {
            double* value = field.Row(row);
            for (int i = _system.Active.Start(row); i < _system.Active.End(row); i++)
                if (!_system.IsWet(layout.At(i, row))) value[i] = 0;
        }
    }

    /// <summary>Carries the accumulated pressure of the wet cells on through the last two states.</summary>
    /// <remarks>In one dimension its root is a straight line over the root of the clock; elsewhere the line is a good guess, which never decides the answer.</remarks>
    private void Predict(double clock)
    {
        double step = Math.Sqrt(_clock) - Math.Sqrt(_previousClock);
        Vector512<double> ahead = Create(step != 0 ? (Math.Sqrt(clock) - Math.Sqrt(_clock)) / step : 0), zero = Vector512<double>.Zero;
        for (int row = 0; row < _system.Layout.Rows; row++)
        {
            double* w = _accumulated.Row(row), before = _previous.Row(row);
            int end = _system.Active.End(row);
            for (int i = _system.Active.Start(row); i < end; i += Vector512<double>.Count)
            {
                Vector512<double> now = Load(w + i), root = Sqrt(now);
                Vector512<double> guess = MaxNative(FusedMultiplyAdd(ahead, root - Sqrt(Load(before + i)), root), zero);
                (guess * guess).Store(w + i);
                now.Store(before + i);
            }
        }

        _previousClock = _clock;
        _clock = clock;
    }
}

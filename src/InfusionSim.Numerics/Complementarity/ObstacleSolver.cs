using System.Runtime.Intrinsics;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Lines;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Stencils;
using static System.Runtime.Intrinsics.Vector512;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Which cells are full, and how full the others, when a supply has been offered for a while: the linear complementarity problem w ≥ 0, C −
/// (θ s − A w) ≥ 0, w·(C − (θ s − A w)) = 0.</summary>
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
    // Ten are usual, a few dozen where the front hardly moves; a set that has not settled by then goes round in circles.
    private const int CorrectionLimit = 400;

    // One cycle is enough while the wet set moves on. Where it still moves after so many, as strongly directed or layered cloth can make it, each set is
    // balanced well: with exact balances the sets settle after finitely many changes (Hintermüller, Ito and Kunisch).
    private const int RestlessAfter = 40;
    private const double RestlessReduction = 1e-3;

    // The front is carried on in the first corrections; later a cell wetted too many could be dried and wetted again without end.
    private const int HandOnLimit = 8;

    // A node that holds nothing is wet as soon as anything is offered: it holds this much, which no sum feels.
    private const double Nothing = 1e-300;

    // A node that was full before the clock began is wet from the first: it can take in this much, which no sum feels.
    private const double FullBefore = 1e-250;

    private readonly LatticeOperator _matrix;
    private readonly WetSystem _system;
    private readonly NodeField _capacity, _supply, _extra, _extraRate, _offer, _accumulated, _previous, _pressure;
    private readonly SurplusCarrier _carrier;
    private double _capacityScale, _heldBefore, _clock, _previousClock;

    // Whether the next state is the first since it began again.
    private bool _isAfresh;

    // Whether the next state is looked for from a guess.
    private bool _isGuessed;

    /// <summary>Makes a solver with every node dry.</summary>
    /// <param name="matrix">Conductances between nodes and to fixed pressures; every group of nodes with capacity must have a way to a fixed pressure.</param>
    /// <param name="capacity">What each node can hold, C [unit of volume]; 0 for a cell that takes no part, and for a line node that holds nothing
    /// but conducts. [nodes].</param>
    /// <param name="supply">Supply per unit of clock, s [unit of conductance], at least 0. [nodes].</param>
    /// <exception cref="ArgumentOutOfRangeException">When a conductance, a capacity or a supply is below 0 or not a number: the conditions under
    /// which one solution is the state.</exception>
    public ObstacleSolver(LatticeOperator matrix, ReadOnlySpan<double> capacity, ReadOnlySpan<double> supply) : this(matrix, capacity, supply, [], 0) { }

    /// <summary>Makes a solver that goes on from a state in which some nodes are full already.</summary>
    /// <param name="matrix">Conductances between nodes and to fixed pressures; every group of nodes with capacity must have a way to a fixed pressure.</param>
    /// <param name="capacity">What each node can still take in, C [unit of volume]; 0 for a cell that takes no part, and for one that is full. [nodes].</param>
    /// <param name="supply">Supply per unit of clock, s [unit of conductance], at least 0. [nodes].</param>
    /// <param name="isFull">Whether each node is full as the clock begins: it conducts from the first. Empty when none is. [nodes].</param>
    /// <param name="heldBefore">What all nodes hold as the clock begins [unit of volume]: imbalances are measured against it too.</param>
    public ObstacleSolver(LatticeOperator matrix, ReadOnlySpan<double> capacity, ReadOnlySpan<double> supply, ReadOnlySpan<bool> isFull, double heldBefore)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        if (capacity.Length != matrix.NodeCount) throw new ArgumentException($"The matrix has {matrix.NodeCount} nodes; the capacity has {capacity.Length}.", nameof(capacity));
        if (supply.Length != matrix.NodeCount) throw new ArgumentException($"The matrix has {matrix.NodeCount} nodes; the supply has {supply.Length}.", nameof(supply));
        _matrix = matrix;
        _system = new WetSystem(matrix);
        _capacity = _system.MakeField();
        _supply = _system.MakeField();
        _extra = _system.MakeField();
        _extraRate = _system.MakeField();
        _offer = _system.MakeField();
        _accumulated = _system.MakeField();
        _pressure = _system.MakeField();
        _previous = _system.MakeField();
        _carrier = new SurplusCarrier(_system, _capacity);
        Begin(capacity, supply, isFull, heldBefore);
    }

    /// <summary>Begins again from another state, with the same conductances: all that has been set up stays, and the pressure found last is taken for a first guess.</summary>
    /// <param name="capacity">What each node can still take in, C [unit of volume]; 0 for a cell that takes no part, and for one that is full. [nodes].</param>
    /// <param name="supply">Supply per unit of clock, s [unit of conductance], at least 0. [nodes].</param>
    /// <param name="isFull">Whether each node is full as the clock begins: it conducts from the first. Empty when none is. [nodes].</param>
    /// <param name="heldBefore">What all nodes hold as the clock begins [unit of volume]: imbalances are measured against it too.</param>
    public void Restart(ReadOnlySpan<double> capacity, ReadOnlySpan<double> supply, ReadOnlySpan<bool> isFull, double heldBefore)
    {
        double[] nothing = new double[_matrix.NodeCount];
        _extra.CopyFrom(nothing, 0);
        _extraRate.CopyFrom(nothing, 0);
        _accumulated.CopyFrom(nothing, 0);
        _previous.CopyFrom(nothing, 0);
        for (int node = 0; node < nothing.Length; node++)
        {
            bool isWet = !isFull.IsEmpty && isFull[node];
            if (node < _matrix.CellCount) _system.SetWet(_system.AtOf(node), isWet);
            else _system.SetLineWet(node - _matrix.CellCount, isWet);
        }

        KeepOnlyWet(_pressure);
        Begin(capacity, supply, isFull, heldBefore);
        (_clock, _previousClock, _isAfresh, _isGuessed) = (0, 0, true, false);
    }

    /// <summary>One scaled unit of accumulated pressure and clock [unit of clock].</summary>
    private double ClockScale => _capacityScale / _system.ConductanceScale;

    /// <summary>Sets what each node is offered on top of supply times clock, as by its weight, from the next state on.</summary>
    /// <remarks>The state stays the one of a fill only as long as what a dry node has been offered never decreases; that is the caller's to see to.</remarks>
    /// <param name="volume">Volume offered up to the clock of the next state [unit of volume], of either sign. [nodes].</param>
    /// <param name="rate">How fast that volume grows with the clock then [unit of conductance], for the pressure. [nodes].</param>
    public void SetExtra(ReadOnlySpan<double> volume, ReadOnlySpan<double> rate)
    {
        _extra.CopyFrom(volume, 1 / _capacityScale);
        _extraRate.CopyFrom(rate, 1 / _system.ConductanceScale);
    }

    /// <summary>Has the next state be looked for from a guess, which never decides the answer, instead of the states found last.</summary>
    /// <param name="accumulated">Accumulated pressure w [unit of clock], at least 0; 0 in nodes that are not full. [nodes].</param>
    /// <param name="pressure">Pressure [unit of the feeds' pressures]; 0 in nodes that are not full. [nodes].</param>
    public void Guess(ReadOnlySpan<double> accumulated, ReadOnlySpan<double> pressure)
    {
        _previous.SetTo(_accumulated, 1);
        _previousClock = _clock;
        _accumulated.CopyFrom(accumulated, 1 / ClockScale);
        _pressure.CopyFrom(pressure, 1);
        _isGuessed = true;
    }

    /// <summary>Finds the state at a value of the clock, starting from the state found last.</summary>
    /// <param name="clock">Clock θ [-], at least 0; may be earlier than the last.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to what the wet cells hold [-].</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport Solve(double clock, double tolerance, CancellationToken cancellation = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(clock);
        double scaledClock = clock / ClockScale;
        if (_isGuessed) (_isGuessed, _clock) = (false, scaledClock);
        else Predict(scaledClock);
        SetOffer(scaledClock, _extra);
        int cycles = 0;
        Patience patience = new(tolerance, CorrectionLimit);
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            WetBalance balance = _system.Balance(_accumulated, _offer, _capacity, _carrier);
            double imbalance = balance.Imbalance / Math.Max(balance.Held + _heldBefore, double.Epsilon);
            bool stands = balance.Changed == 0;
            if (patience.Judge(imbalance, stands) is StopReason reason) return new(reason, patience.Corrections, cycles, imbalance);
            if (patience.Corrections < HandOnLimit) _carrier.HandOn();
            else _carrier.Drop();
            if (stands || patience.Corrections >= RestlessAfter)
            {
                double reduction = stands ? patience.Reduction(imbalance) : RestlessReduction;
                cycles += _system.Correct(_accumulated, _offer, _capacity, reduction, cancellation);
            }
            else
            {
                _system.CorrectOnce(_accumulated, _offer, _capacity);
                cycles++;
            }
        }
    }

    /// <summary>Finds the pressure at the clock of the last state: how fast the accumulated pressure rises.</summary>
    /// <param name="tolerance">Largest sum of imbalances relative to the supply [-].</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport SolvePressure(double tolerance, CancellationToken cancellation = default)
    {
        KeepOnlyWet(_pressure);
        SetOffer(1, _extraRate);
        SolveReport report = _system.SolveLinear(_pressure, _offer, tolerance, cancellation);
        SetOffer(_clock, _extra);
        return report;
    }

    /// <summary>Copies the accumulated pressure w of the last state [unit of clock]; 0 where a node is not full. [nodes].</summary>
    /// <param name="target">Where to [unit of clock], as many as there are nodes.</param>
    public void CopyAccumulatedPressure(Span<double> target) => _accumulated.CopyTo(target, ClockScale);

    /// <summary>Copies the pressure found last [unit of the feeds' pressures]; 0 where a node is not full. [nodes].</summary>
    /// <param name="target">Where to [unit of the feeds' pressures], as many as there are nodes.</param>
    public void CopyPressure(Span<double> target) => _pressure.CopyTo(target, 1);

    /// <summary>Copies how full each node is in the last state [-], 0 to 1; 0 for a cell that takes no part. [nodes].</summary>
    /// <param name="target">Where to [-], as many as there are nodes.</param>
    public void CopySaturation(Span<double> target)
    {
        int cells = target.Length - _system.LineNodes;
        _system.ReadLines(_accumulated);
        PaddedLayout layout = _system.Layout;
        int cell = 0;
        for (int line = 0; line < layout.Layers * layout.Rows; line++)
        {
            int row = line % layout.Rows, layer = line / layout.Rows;
            double* full = _accumulated.Cells.Row(row, layer), hold = _capacity.Cells.Row(row, layer);
            for (int i = 0; i < layout.Columns; i++)
            {
                target[cell++] = hold[i] > 0 ? full[i] > 0 ? 1 : Math.Clamp(Received(row, i, layer) / hold[i], 0, 1) : 0;
            }
        }

        double[] receipt = new double[_system.LineNodes];
        _system.LineReceipt(_offer, _accumulated, receipt);
        for (int node = 0; node < receipt.Length; node++)
            target[cells + node] = _accumulated.Lines[node] > 0 ? 1 : Math.Clamp(receipt[node] / _capacity.Lines[node], 0, 1);
    }

    /// <summary>Copies what each line node has been given by fixed pressures up to the clock of the last state, less what it gave to them.</summary>
    /// <remarks><see cref="SetExtra"/> is not in it. Taken from the accumulated pressures it would be lost to rounding where a line conducts many million times better than the cloth.</remarks>
    /// <param name="target">Where to [unit of volume]. [line nodes].</param>
    public void CopyLineSupply(Span<double> target)
    {
        _system.LineSupply(_offer, _accumulated, target);
        for (int node = 0; node < target.Length; node++) target[node] = (target[node] - _extra.Lines[node]) * _capacityScale;
    }

    private void Begin(ReadOnlySpan<double> capacity, ReadOnlySpan<double> supply, ReadOnlySpan<bool> isFull, double heldBefore)
    {
        double total = 0;
        int holding = 0;
        foreach (double volume in capacity)
        {
            if (!(volume >= 0)) throw new ArgumentOutOfRangeException(nameof(capacity), volume, "A cell cannot hold less than nothing.");
            if (volume == 0) continue;
            total += volume;
            holding++;
        }

        if (!isFull.IsEmpty && isFull.Length != _matrix.NodeCount) throw new ArgumentException($"The matrix has {_matrix.NodeCount} nodes; {isFull.Length} are named.", nameof(isFull));
        _capacityScale = isFull.IsEmpty ? (holding > 0 ? total / holding : 1) : (total + heldBefore) / _matrix.NodeCount;
        _heldBefore = heldBefore / _capacityScale;
        double[] room = capacity.ToArray();
        for (int node = 0; node < isFull.Length; node++) if (isFull[node]) room[node] = FullBefore * _capacityScale;
        _capacity.CopyFrom(room, 1 / _capacityScale);
        for (int node = 0; node < _capacity.Lines.Length; node++) _capacity.Lines[node] = Math.Max(_capacity.Lines[node], Nothing);
        double[] offered = supply.ToArray();
        for (int node = 0; node < offered.Length; node++)
        {
            if (!(offered[node] >= 0)) throw new ArgumentOutOfRangeException(nameof(supply), offered[node], "A supply that takes back would dry full cells, which this solution does not cover.");
            if (node >= _matrix.CellCount) continue;
            if (room[node] == 0) offered[node] = 0;
            if (offered[node] > 0) _system.Watch(_system.AtOf(node));
        }

        // What a line node feeds may lie anywhere, not only beside what is wet.
        foreach (int at in _system.LinkedCells) _system.Watch(at);
        for (int node = 0; node < isFull.Length; node++)
        {
            if (!isFull[node]) continue;
            if (node < _matrix.CellCount) _system.SetWet(_system.AtOf(node), wet: true);
            else _system.SetLineWet(node - _matrix.CellCount, wet: true);
        }

        // What is not quite full must be looked at even where nothing beside it is.
        if (!isFull.IsEmpty)
        {
            for (int cell = 0; cell < _matrix.CellCount; cell++) if (room[cell] > 0) _system.Watch(_system.AtOf(cell));
        }

        _supply.CopyFrom(offered, 1 / _system.ConductanceScale);
    }

    // What a dry cell has received: away from what is wet nothing flows.
    private double Received(int row, int column, int layer)
    {
        double offered = _offer.Cells.Row(row, layer)[column];
        return _system.IsNearWet(row, column) ? offered - _system.Outflow(_accumulated, _system.Layout.At(column, row, layer)) : offered;
    }

    private void SetOffer(double clock, NodeField extra)
    {
        PaddedLayout layout = _system.Layout;
        for (int layer = 0; layer < layout.Layers; layer++)
        {
            for (int row = 0; row < layout.Rows; row++)
            {
                double* s = _supply.Cells.Row(row, layer), e = extra.Cells.Row(row, layer), offer = _offer.Cells.Row(row, layer);
                for (int i = 0; i < layout.PaddedColumns; i += Vector512<double>.Count)
                    FusedMultiplyAdd(Create(clock), Load(s + i), Load(e + i)).Store(offer + i);
            }
        }

        for (int node = 0; node < _offer.Lines.Length; node++) _offer.SetLine(node, clock, _supply.Lines[node], extra.Lines[node]);
    }

    private void KeepOnlyWet(NodeField field)
    {
        PaddedLayout layout = _system.Layout;
        for (int layer = 0; layer < layout.Layers; layer++)
        {
            for (int row = 0; row < layout.Rows; row++)
            {
                double* value = field.Cells.Row(row, layer);
                for (int i = _system.Active.Start(row); i < _system.Active.End(row); i++)
                    if (!_system.IsWet(layout.At(i, row, layer))) value[i] = 0;
            }
        }

        for (int node = 0; node < field.Lines.Length; node++) if (!_system.IsLineWet(node)) field.SetLine(node, 0);
    }

    /// <summary>Carries the accumulated pressure of the wet nodes on through the last two states.</summary>
    /// <remarks>In one dimension its root is a straight line over the root of the clock; elsewhere the line is a good guess, which never decides the
    /// answer.</remarks>
    private void Predict(double clock)
    {
        if (_isAfresh)
        {
            _isAfresh = false;
            _clock = clock;
            _accumulated.SetTo(_pressure, clock);
            return;
        }

        double step = Math.Sqrt(_clock) - Math.Sqrt(_previousClock);
        double factor = step != 0 ? (Math.Sqrt(clock) - Math.Sqrt(_clock)) / step : 0;
        Vector512<double> ahead = Create(factor), zero = Vector512<double>.Zero;
        for (int layer = 0; layer < _system.Layout.Layers; layer++)
        {
            for (int row = 0; row < _system.Layout.Rows; row++)
            {
                double* w = _accumulated.Cells.Row(row, layer), before = _previous.Cells.Row(row, layer);
                int end = _system.Active.End(row);
                for (int i = _system.Active.Start(row); i < end; i += Vector512<double>.Count)
                {
                    Vector512<double> now = Load(w + i), root = Sqrt(now);
                    Vector512<double> guess = MaxNative(FusedMultiplyAdd(ahead, root - Sqrt(Load(before + i)), root), zero);
                    (guess * guess).Store(w + i);
                    now.Store(before + i);
                }
            }
        }

        for (int node = 0; node < _accumulated.Lines.Length; node++)
        {
            double now = _accumulated.Lines[node], guess = Math.Max(0, Math.Sqrt(now) + factor * (Math.Sqrt(now) - Math.Sqrt(_previous.Lines[node])));
            _accumulated.SetLine(node, guess * guess);
            _previous.SetLine(node, now);
        }

        _previousClock = _clock;
        _clock = clock;
    }
}

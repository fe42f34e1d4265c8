using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Gravity;

namespace InfusionSim.Physics.Flow;

/// <summary>Computes the panel at one clock value after another, each from the state before. One instance serves one thread.</summary>
public sealed class FillMarcher
{
    /// <summary>Imbalance the states along the way are computed to, relative to the wet pore volume [-].</summary>
    public const double TrackingTolerance = 1e-7;

    /// <summary>Imbalance of the states that only tell when the front passes, relative to the wet pore volume [-].</summary>
    /// <remarks>Were all of it in one cell of a hundred thousand, its share would be a tenth off; spread along a front it moves no arrival by a
    /// ten-thousandth of the fill. Seen by tracking three panels to a tenth of it.</remarks>
    public const double PassingTolerance = 1e-6;

    /// <summary>Imbalance a forecast is computed to, relative to the wet pore volume [-].</summary>
    public const double ForecastTolerance = 1e-10;

    /// <summary>Imbalance of a state that another stretch goes on from, relative to the wet pore volume [-]: what is lost at each of many does not come back.</summary>
    public const double HandOverTolerance = 1e-13;

    // Rounding may keep a solver above its tolerance; a millionth of what is held is still far below what any cloth is known to.
    internal const double WorstAccepted = 1e-6;

    // A pressure is balanced this much more loosely than the state it belongs to: nothing is added up from it.
    private const double PressureTolerance = 10;

    internal const int LongestMend = 60;

    private readonly FillProblem _problem;
    private readonly FillStart _start;
    private readonly double[] _capacity, _supply;
    private readonly bool[] _isFull;
    private readonly double _partVolume, _heldBefore;
    private readonly GravityLoad? _gravity;
    private readonly GrowingWetSet? _growing;
    private readonly GasInState? _gas;
    private ObstacleSolver _solver;

    // Whether no feed reaches anything: all stays as it is.
    private readonly bool _isStill;

    // Whether the solver holds the full nodes alone.
    private bool _isPartial;

    /// <summary>Makes a marcher with a dry panel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Nodes that a feed can reach; the others stay dry. [nodes].</param>
    public FillMarcher(FillProblem problem, bool[] reached) : this(problem, reached, null, null) { }

    /// <summary>Makes a marcher that goes on from where a stretch of a fill began.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Nodes that a feed can reach; the others stay as they are. [nodes].</param>
    /// <param name="start">The panel as the stretch began.</param>
    public FillMarcher(FillProblem problem, bool[] reached, FillStart start) : this(problem, reached, null, start) { }

    /// <summary>Makes a marcher with a dry panel whose resin has weight.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Nodes that the resin can reach. [nodes].</param>
    /// <param name="gravity">What weight moves; null for none. Its full clocks are read anew for each state.</param>
    /// <param name="start">The panel as the stretch of the fill began; null for dry.</param>
    /// <param name="gas">Gas in sealed pockets; null for none.</param>
    /// <param name="arrival">When the front passed each node, for gas that opens again [-]; null without gas. [nodes].</param>
    /// <param name="before">A marcher that is done with, whose solver goes on where its network is the same; null for none.</param>
    internal FillMarcher(
        FillProblem problem, bool[] reached, GravityLoad? gravity, FillStart? start = null, GasHold? gas = null, double[]? arrival = null, FillMarcher? before = null)
    {
        _problem = problem;
        _gravity = gravity;
        _gas = gas is null ? null : new GasInState(problem, gas, arrival!);
        _start = start ?? FillStart.Dry(problem);
        _capacity = new double[reached.Length];
        _isFull = _start.IsDry ? [] : new bool[reached.Length];
        for (int node = 0; node < _capacity.Length; node++)
        {
            if (!reached[node]) continue;
            _capacity[node] = problem.PoreVolume[node] * (1 - _start.Saturation[node]);
            if (_isFull.Length > 0 && problem.PoreVolume[node] > 0) _isFull[node] = _start.Saturation[node] >= 1;
            if (_isFull.Length > 0) _heldBefore += problem.PoreVolume[node] * _start.Saturation[node];
        }

        _partVolume = problem.PartVolume;
        _supply = problem.Supply();
        _isStill = gas is null && !Array.Exists(reached, static isIn => isIn);
        _solver = before is not null && ReferenceEquals(before._problem.Operator, problem.Operator) ? before.Restarted(_capacity, _supply, _isFull, _heldBefore) : NewSolver();
        if (gravity is not null) _growing = new GrowingWetSet(problem, _capacity, _supply, gravity) { IsFull = _isFull, HeldBefore = _heldBefore };
    }

    /// <summary>Most rounds in which what weight moves is mended to fit a state [-].</summary>
    internal int MendLimit { get; set; } = LongestMend;

    /// <summary>Whether it fitted in the end; where not, the volume that is missing shows in the balance of the state.</summary>
    internal bool IsMended { get; private set; } = true;

    /// <summary>Whether neither weight nor trapped gas moves the resin.</summary>
    internal bool IsDrivenByFeeds => _gravity is null && _gas is null;

    /// <summary>What weight brings each node per unit of clock at the state computed last [m³]; empty when it does not count. [nodes].</summary>
    internal ReadOnlySpan<double> GravityRate => _gravity is null ? [] : _gravity.Rate;

    /// <summary>Has the next state be looked for from a guess, which never decides it.</summary>
    /// <param name="accumulated">Accumulated pressure [-], at least 0; 0 in nodes that are not full. [nodes].</param>
    /// <param name="pressure">Pressure [-]; 0 in nodes that are not full. [nodes].</param>
    internal void Guess(double[] accumulated, double[] pressure) => _solver.Guess(accumulated, pressure);

    /// <summary>Computes the panel at one value of the drive clock.</summary>
    /// <param name="clock">Drive clock [-], at least that of the start.</param>
    /// <param name="withPressure">Whether to compute the pressure too.</param>
    /// <param name="tolerance">Largest imbalance relative to the wet pore volume [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public FillState StateAt(double clock, bool withPressure, double tolerance = ForecastTolerance, CancellationToken cancellation = default)
    {
        int count = _problem.Operator.NodeCount;
        double[] accumulated = new double[count], saturation = new double[count];
        double since = clock - _start.Clock;
        _gravity?.SetClock(since);
        _gas?.SetClock(since);
        bool grows = false;
        for (int round = 0; ; round++)
        {
            if (_isStill) break;
            SolveReport report = Solve(clock, tolerance, _start.IsDry || grows, cancellation);
            _solver.CopyAccumulatedPressure(accumulated);
            IsMended = _gravity?.Mend(since, accumulated) != true;
            if (!IsMended && round < MendLimit) continue;
            if (!IsPoor(report)) break;

            // Only what has begun anew comes here with that: it had to be mended first.
            if (_gravity!.FirstLosing(since, accumulated) is >= 0 and int losing)
                throw new ResinRunsBackException(RestingResin.PlaceOf(_problem, losing), clock);
            if (grows) Demand(report, clock, WorstAccepted);
            grows = true;
        }

        if (_isPartial) _growing!.CopySaturation(since, accumulated, saturation);
        else if (!_isStill) _solver.CopySaturation(saturation);
        if (!_start.IsDry) AddStart(saturation);
        double[]? pressure = withPressure ? new double[count] : null;
        if (withPressure && !_isStill)
        {
            double pressureTolerance = PressureTolerance * Math.Max(tolerance, ForecastTolerance);
            Demand(_solver.SolvePressure(pressureTolerance, cancellation), clock, Math.Max(WorstAccepted, pressureTolerance));
            _solver.CopyPressure(pressure);
        }

        _gas?.Add(since, _start, _supply, accumulated, saturation, pressure);
        ResinAccount account = ResinAccount.Of(_problem, _start, since, accumulated, saturation, LineSupply(), _gravity);
        return new FillState
        {
            Clock = clock,
            Saturation = saturation,
            AccumulatedPressure = accumulated,
            Pressure = pressure,
            FilledFraction = _partVolume > 0 ? account.InPart / _partVolume : 0,
            MeshVolume = account.InMesh,
            ResinIn = account.In,
            ResinOut = account.Out,
            FeedLineVolume = account.FeedLines,
            VentLineVolume = account.VentLines,
            GapVolume = account.InGaps,
            Drawn = account.Drawn,
            Drained = account.Drained,
            AccumulatedGas = _gas?.Accumulated,
            GasPressure = _gas?.Pressure,
            GasVolumes = _gas?.Volumes ?? [],
            GasNodes = _gas?.Nodes ?? [],
            MassBalanceError = account.Error,
        };
    }

    private ObstacleSolver Restarted(double[] capacity, double[] supply, bool[] isFull, double heldBefore)
    {
        _solver.Restart(capacity, supply, isFull, heldBefore);
        return _solver;
    }

    private ObstacleSolver NewSolver() => new(_problem.Operator, _capacity, _supply, _isFull, _heldBefore);

    // What feeds have given each line node since the start, less what vents took from it. The solver's pressures are those above the gas's.
    private double[] LineSupply()
    {
        int first = _problem.Operator.CellCount;
        double[] supply = new double[_problem.Operator.LineNodes];
        _solver.CopyLineSupply(supply);
        for (int node = 0; _gas is not null && node < supply.Length; node++) supply[node] -= _problem.Operator.Anchor[first + node] * _gas.Accumulated[first + node];
        return supply;
    }

    private void AddStart(double[] saturation)
    {
        for (int node = 0; node < saturation.Length; node++)
        {
            double before = _start.Saturation[node];
            saturation[node] = saturation[node] >= 1 ? 1 : before + (1 - before) * saturation[node];
        }
    }

    private SolveReport Solve(double clock, double tolerance, bool grows, CancellationToken cancellation)
    {
        if (_isPartial) _solver = NewSolver();
        _isPartial = false;
        if (_gravity is not null) _solver.SetExtra(_gravity.Volume, _gravity.Rate);
        if (_gas is not null) _solver.SetExtra(_gas.Volume, _gas.Rate);
        SolveReport report = _solver.Solve(clock - _start.Clock, tolerance, cancellation);
        if (_growing is not null && IsPoor(report) && grows)
        {
            _solver = _growing.Solve(clock - _start.Clock, tolerance, out report, cancellation);
            _isPartial = true;
        }

        if (_gravity is null || _start.IsDry) Demand(report, clock, WorstAccepted);
        return report;
    }

    // Where much resin runs past cells that hold next to nothing those may change places for ever; what counts is that the balance holds.
    private static bool IsPoor(SolveReport report) => !(report.Imbalance <= WorstAccepted);

    private static void Demand(SolveReport report, double clock, double accepted)
    {
        if (!(report.Imbalance <= accepted)) throw new FlowNotSolvedException($"The state at drive clock {clock:G6} was not found: {report}.");
    }
}

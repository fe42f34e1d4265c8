using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;

namespace InfusionSim.Physics.Flow;

/// <summary>Computes the panel at one clock value after another, each from the state before. One instance serves one thread.</summary>
public sealed class FillMarcher
{
    /// <summary>Imbalance the states along the way are computed to, relative to the wet pore volume [-].</summary>
    public const double TrackingTolerance = 1e-7;

    /// <summary>Imbalance a forecast is computed to, relative to the wet pore volume [-].</summary>
    public const double ForecastTolerance = 1e-10;

    private const double WorstAccepted = 1e-6;

    private readonly FillProblem _problem;
    private readonly ObstacleSolver _solver;
    private readonly double _partVolume;

    /// <summary>Makes a marcher with a dry panel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="reached">Nodes that a feed can reach; the others stay dry. [nodes].</param>
    public FillMarcher(FillProblem problem, bool[] reached)
    {
        _problem = problem;
        double[] capacity = new double[reached.Length];
        for (int cell = 0; cell < capacity.Length; cell++) capacity[cell] = reached[cell] ? problem.PoreVolume[cell] : 0;
        _partVolume = problem.PartVolume;
        _solver = new ObstacleSolver(problem.Operator, capacity, problem.Supply());
    }

    /// <summary>Cycles of the solver so far [-].</summary>
    public int Cycles { get; private set; }

    /// <summary>Computes the panel at one value of the drive clock.</summary>
    /// <param name="clock">Drive clock [-], at least 0.</param>
    /// <param name="withPressure">Whether to compute the pressure too.</param>
    /// <param name="tolerance">Largest imbalance relative to the wet pore volume [-].</param>
    /// <param name="cancellation">Stops the work.</param>
    public FillState StateAt(double clock, bool withPressure, double tolerance = ForecastTolerance, CancellationToken cancellation = default)
    {
        int count = _problem.Operator.NodeCount;
        Demand(_solver.Solve(clock, tolerance, cancellation), clock);
        double[] accumulated = new double[count], saturation = new double[count];
        _solver.CopyAccumulatedPressure(accumulated);
        _solver.CopySaturation(saturation);
        double[]? pressure = null;
        if (withPressure)
        {
            Demand(_solver.SolvePressure(10 * tolerance, cancellation), clock);
            pressure = new double[count];
            _solver.CopyPressure(pressure);
        }

        ResinAccount account = ResinAccount.Of(_problem, clock, accumulated, saturation);
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
            MassBalanceError = account.Error,
        };
    }

    private void Demand(SolveReport report, double clock)
    {
        Cycles += report.Cycles;
        if (report.Reason == StopReason.IterationLimit || report.Imbalance > WorstAccepted)
            throw new FlowNotSolvedException($"The state at drive clock {clock:G6} was not found: {report}.");
    }
}

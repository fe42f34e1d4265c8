using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>Finds a state from below: only nodes that are surely full may be, and those that are then offered more than they can hold are let in until there are none.</summary>
/// <remarks>
/// Shutting nodes out takes pressure from all others, so each round stays at or below the state and what it lets in belongs to it (the monotone convergence of
/// primal-dual active sets for M-matrices, Hintermüller, Ito and Kunisch, SIAM J. Optim. 13 (2002) 865, from memory). Slower than a solve from a guess, but
/// it cannot run in a circle, as guesses do now and then where gravity has all but stopped a front and one node too many takes the pressure from many.
/// </remarks>
internal sealed class GrowingWetSet
{
    // Nodes full for a shorter share of the clock than this may come out not quite full.
    private const double Margin = 0.02;
    private const double Rounding = 1e-9;
    private const int RoundLimit = 2000;

    private readonly FillProblem _problem;
    private readonly double[] _capacity, _supply;
    private readonly GravityLoad _load;
    private readonly List<NodeNeighbour> _neighbours = [];

    /// <summary>Makes one for a fill.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="capacity">What each node can hold [m³]. [nodes].</param>
    /// <param name="supply">What feeds give per unit of clock [m³]. [nodes].</param>
    /// <param name="load">What weight moves.</param>
    public GrowingWetSet(FillProblem problem, double[] capacity, double[] supply, GravityLoad load)
    {
        _problem = problem;
        _capacity = capacity;
        _supply = supply;
        _load = load;
    }

    /// <summary>Whether each node is full as the clock begins; empty when none is. [nodes].</summary>
    public bool[] IsFull { get; init; } = [];

    /// <summary>What all nodes hold as the clock begins [m³].</summary>
    public double HeldBefore { get; init; }

    /// <summary>Finds the state; returns a solver that holds its full nodes.</summary>
    /// <param name="clock">Drive clock since the stretch began [-], that of the load.</param>
    /// <param name="tolerance">Largest imbalance relative to the wet pore volume [-].</param>
    /// <param name="report">What the last solve came to.</param>
    /// <param name="cancellation">Stops the work.</param>
    public ObstacleSolver Solve(double clock, double tolerance, out SolveReport report, CancellationToken cancellation)
    {
        double[] may = new double[_capacity.Length], accumulated = new double[_capacity.Length];
        for (int node = 0; node < may.Length; node++) may[node] = _load.FullClock[node] < clock * (1 - Margin) ? _capacity[node] : 0;
        for (int round = 0; ; round++)
        {
            ObstacleSolver solver = new(_problem.Operator, may, _supply, IsFull, HeldBefore);
            solver.SetExtra(_load.Volume, _load.Rate);
            report = solver.Solve(clock, tolerance, cancellation);
            solver.CopyAccumulatedPressure(accumulated);
            if (!LetIn(clock, accumulated, may)) return solver;
            if (round == RoundLimit) throw new FlowNotSolvedException($"The wet nodes at drive clock {clock:G6} did not stand still.");
        }
    }

    /// <summary>How full each node is [-], 0 to 1; 0 for one that takes no part. [nodes].</summary>
    /// <param name="clock">Drive clock [-], that of the load.</param>
    /// <param name="accumulated">Accumulated pressure [-]. [nodes].</param>
    /// <param name="target">Where to [-]. [nodes].</param>
    public void CopySaturation(double clock, double[] accumulated, double[] target)
    {
        for (int node = 0; node < target.Length; node++)
            target[node] = _capacity[node] == 0 ? 0 : accumulated[node] > 0 ? 1 : Math.Clamp(Offered(node, clock, accumulated) / _capacity[node], 0, 1);
    }

    private bool LetIn(double clock, double[] accumulated, double[] may)
    {
        bool any = false;
        for (int node = 0; node < may.Length; node++)
        {
            if (may[node] > 0 || _capacity[node] == 0 || Offered(node, clock, accumulated) <= _capacity[node] * (1 + Rounding)) continue;
            may[node] = _capacity[node];
            any = true;
        }

        return any;
    }

    /// <summary>What a node that holds no pressure has been offered [m³].</summary>
    private double Offered(int node, double clock, double[] accumulated)
    {
        double offered = _supply[node] * clock + _load.Volume[node];
        _problem.Operator.CollectNeighbours(node, _neighbours);
        foreach ((int other, double conductance) in _neighbours) offered += conductance * accumulated[other];
        return offered;
    }
}

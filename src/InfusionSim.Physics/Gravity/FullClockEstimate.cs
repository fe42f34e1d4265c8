using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>For how long a node has been full, from its accumulated pressure and its pressure now.</summary>
/// <remarks>
/// A node that fills at the inflow q starts at the pressure p₀ that drives q on to the next, and in a front that moves evenly gains p₀ with
/// each node that fills after it, each in C/q. After n of them w = ∫ p dθ gives θ − τ = w/p + n C/(2q), with n = p/p₀ − 1: w/p for
/// a node just filled, 2w/p for one far behind the front; those two bound it elsewhere. Derived for one
/// direction; an estimate in others.
/// </remarks>
internal sealed class FullClockEstimate
{
    // A way that carries less than this share of the strongest leads along the front rather than to it; it counts less and less, so that rounding does not decide.
    private const double Weak = 0.1;

    private readonly FillProblem _problem;
    private readonly double[] _ventConductance;
    private readonly List<NodeNeighbour> _neighbours = [];

    /// <summary>Makes an estimate for a problem.</summary>
    /// <param name="problem">A problem with heads.</param>
    public FullClockEstimate(FillProblem problem)
    {
        _problem = problem;
        _ventConductance = new double[problem.Operator.NodeCount];
        for (int vent = 0; vent < problem.Vents.Count; vent++)
        {
            if (!problem.VentPassesResin[vent]) continue;
            foreach (var contact in problem.Vents[vent].Contacts)
                if (contact.LineNode < 0) _ventConductance[contact.Cell] += contact.Conductance;
        }

        foreach (var drain in problem.Network.Drains) _ventConductance[drain.Node] += drain.Conductance;
    }

    /// <summary>For how long a node has been full at the clock of a state [-].</summary>
    /// <param name="state">The state, with pressure.</param>
    /// <param name="load">What weight moves.</param>
    /// <param name="node">The node; full.</param>
    public double FullFor(FillState state, GravityLoad load, int node)
    {
        double w = state.AccumulatedPressure[node], p = state.Pressure![node];
        if (!(p > 0)) return 0;
        double shortest = w / p, conductance = _ventConductance[node], onward = conductance * p, weight = 0;
        _problem.Operator.CollectNeighbours(node, _neighbours);
        double strongest = onward;
        foreach ((int other, double way) in _neighbours) strongest = Math.Max(strongest, way * (p - state.Pressure[other] - Rise(node, other)));
        foreach ((int other, double way) in _neighbours)
        {
            double rise = Rise(node, other), flow = way * (p - state.Pressure[other] - rise);
            if (!(flow > 0)) continue;
            double share = Math.Min(1, flow / (Weak * strongest));
            conductance += share * way;
            weight += share * way * rise;
            onward += flow;
        }

        if (!(onward > 0) || !(onward + weight > 0)) return shortest;
        double filledSince = p * conductance / (onward + weight) - 1;
        return Math.Clamp(shortest + filledSince * _problem.PoreVolume[node] / (2 * onward), shortest, 2 * shortest);
    }

    private double Rise(int from, int to) => _problem.Heads![to] - _problem.Heads[from];
}

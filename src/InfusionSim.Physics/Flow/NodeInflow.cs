using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Flow;

/// <summary>How fast a node that is not full takes in resin, read off a state. One instance serves one thread.</summary>
internal sealed class NodeInflow
{
    private readonly FillProblem _problem;
    private readonly double[] _supply;
    private readonly List<NodeNeighbour> _neighbours = [];

    /// <summary>Makes a reader.</summary>
    /// <param name="problem">The panel as numbers.</param>
    public NodeInflow(FillProblem problem)
    {
        _problem = problem;
        _supply = problem.Supply();
    }

    /// <summary>How fast the share of a node grows with the clock [-].</summary>
    /// <param name="state">The panel, with its pressures.</param>
    /// <param name="gravity">What weight brings each node per unit of clock at that state [m³]; null when it does not count. [nodes].</param>
    /// <param name="node">Index of a node that is not full.</param>
    public double RateOf(FillState state, double[]? gravity, int node)
    {
        double inflow = _supply[node] + (gravity?[node] ?? 0);
        _problem.Operator.CollectNeighbours(node, _neighbours);
        foreach (NodeNeighbour neighbour in _neighbours) inflow += neighbour.Conductance * state.Pressure![neighbour.Node];
        if (state.GasPressure is double[] gas && gas[node] != 0) inflow -= gas[node] * _problem.Operator.DiagonalOf(node);
        return inflow / _problem.PoreVolume[node];
    }
}

namespace InfusionSim.Physics.Flow;

/// <summary>What the front is followed by, at one moment.</summary>
/// <param name="State">The panel, with its pressures.</param>
/// <param name="Gravity">What weight brings each node per unit of clock [m³]; null when it does not count. [nodes].</param>
/// <param name="Inflow">Reads rates off the state, where they are asked for.</param>
internal sealed record FrontSample(FillState State, double[]? Gravity, NodeInflow Inflow)
{
    /// <summary>Drive clock [-].</summary>
    public double Clock => State.Clock;

    /// <summary>How full each node is [-], 0 to 1. [nodes].</summary>
    public double[] Share => State.Saturation;

    /// <summary>How fast the share of a node grows with the clock [-]; 0 where it is dry or full.</summary>
    /// <param name="node">Index of the node.</param>
    public double RateOf(int node) => Share[node] > 0 && !IsFull(node) ? Inflow.RateOf(State, Gravity, node) : 0;

    /// <summary>How long a node has been full, at least [-]; 0 where it is not.</summary>
    /// <param name="node">Index of the node.</param>
    public double FullFor(int node)
    {
        if (!IsFull(node)) return 0;
        double above = State.PressureSinceFull(node);
        return above > 0 ? Math.Max(0, State.AccumulatedSinceFull(node)) / above : 0;
    }

    private bool IsFull(int node) => State.AccumulatedPressure[node] > 0 && (State.GasPressure is null || Share[node] >= 1);
}

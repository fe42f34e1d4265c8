namespace InfusionSim.Physics.Flow;

/// <summary>The panel as it stands when a stretch of a fill begins: dry, or as the stretch before has left it.</summary>
/// <remarks>
/// When a clamp is turned the pressures change at once and the resin stays where it is: what each node can still take in is C (1 − F), and pressures accumulate
/// from nothing again (derived; the same transform as in the state of a fill).
/// </remarks>
public sealed class FillStart
{
    /// <summary>Drive clock at which the stretch begins [-].</summary>
    public required double Clock { get; init; }

    /// <summary>How full each node is then [-], 0 to 1. [nodes].</summary>
    public required double[] Saturation { get; init; }

    /// <summary>Volume that cloth and gaps have taken from each feed by then [m³].</summary>
    public required IReadOnlyList<double> ResinIn { get; init; }

    /// <summary>Volume that cloth and gaps have given to each vent by then [m³].</summary>
    public required IReadOnlyList<double> ResinOut { get; init; }

    /// <summary>Volume drawn from the pots by then [m³].</summary>
    public double Drawn { get; init; }

    /// <summary>Volume that has left at the vents' ends by then [m³].</summary>
    public double Drained { get; init; }

    /// <summary>Whether nothing has flowed yet.</summary>
    public bool IsDry => Clock == 0 && Drawn == 0;

    /// <summary>Whether a node is full then.</summary>
    /// <param name="node">Index of the node.</param>
    public bool IsFull(int node) => Saturation[node] >= 1;

    /// <summary>A dry panel.</summary>
    /// <param name="problem">The panel as numbers.</param>
    public static FillStart Dry(FillProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return new()
        {
            Clock = 0,
            Saturation = new double[problem.Operator.NodeCount],
            ResinIn = new double[problem.Feeds.Count],
            ResinOut = new double[problem.Vents.Count],
        };
    }

    /// <summary>The panel as a state has left it.</summary>
    /// <param name="state">The state.</param>
    public static FillStart From(FillState state)
    {
        ArgumentNullException.ThrowIfNull(state);
        return new()
        {
            Clock = state.Clock,
            Saturation = state.Saturation,
            ResinIn = state.ResinIn,
            ResinOut = state.ResinOut,
            Drawn = state.Drawn,
            Drained = state.Drained,
        };
    }

    /// <summary>What each node can still take in [m³]. [nodes].</summary>
    /// <param name="problem">The panel as numbers.</param>
    public double[] RoomIn(FillProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        return [.. problem.PoreVolume.Select((volume, node) => volume * (1 - Saturation[node]))];
    }
}

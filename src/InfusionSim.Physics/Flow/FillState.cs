namespace InfusionSim.Physics.Flow;

/// <summary>The panel at one value of the drive clock. Arrays run over the nodes of its problem, [nodes].</summary>
public sealed class FillState
{
    /// <summary>Drive clock [-].</summary>
    public required double Clock { get; init; }

    /// <summary>How full each node is [-], 0 to 1; 0 where there is nothing to fill. [nodes].</summary>
    public required double[] Saturation { get; init; }

    /// <summary>Pressure above the bag's over the driving pressure, accumulated since the stretch of the fill began, in each node [-]. [nodes].</summary>
    public required double[] AccumulatedPressure { get; init; }

    /// <summary>Pressure above the bag's over the driving pressure [-], 0 to 1; null unless asked for. [nodes].</summary>
    public double[]? Pressure { get; init; }

    /// <summary>What of the accumulated pressure is that of trapped gas, in the nodes that it keeps from filling [-]; null without trapped gas. [nodes].</summary>
    internal double[]? AccumulatedGas { get; init; }

    /// <summary>Pressure of trapped gas above the bag's over the driving pressure, in the nodes that it keeps from filling [-]; null without trapped gas. [nodes].</summary>
    internal double[]? GasPressure { get; init; }

    /// <summary>Gas in each pocket at that moment [m³], in the order of the stretch.</summary>
    internal IReadOnlyList<double> GasVolumes { get; init; } = [];

    /// <summary>Nodes of each pocket at that moment, in the order of the stretch.</summary>
    internal IReadOnlyList<IReadOnlyList<int>> GasNodes { get; init; } = [];

    /// <summary>Accumulated pressure since a node was full [-]; 0 while it is not.</summary>
    /// <param name="node">Index of the node.</param>
    internal double AccumulatedSinceFull(int node) => AccumulatedPressure[node] - (AccumulatedGas?[node] ?? 0);

    /// <summary>Pressure of a full node above that of the gas that was in it [-].</summary>
    /// <param name="node">Index of the node.</param>
    internal double PressureSinceFull(int node) => Pressure![node] - (GasPressure?[node] ?? 0);

    /// <summary>Share of the pore volume of laminate and core that is full [-].</summary>
    public required double FilledFraction { get; init; }

    /// <summary>Volume that cloth and gaps have taken from each feed so far [m³].</summary>
    public required IReadOnlyList<double> ResinIn { get; init; }

    /// <summary>Volume that cloth and gaps have given to each vent so far [m³].</summary>
    public required IReadOnlyList<double> ResinOut { get; init; }

    /// <summary>Volume drawn so far that stands in the hose and line of each feed [m³]; the hose of a pot counts with the first feed it serves.</summary>
    public IReadOnlyList<double> FeedLineVolume { get; init; } = [];

    /// <summary>Volume that stands in the line and hose of each vent [m³].</summary>
    public IReadOnlyList<double> VentLineVolume { get; init; } = [];

    /// <summary>Volume in mesh and peel ply, which come off the part [m³].</summary>
    public double MeshVolume { get; init; }

    /// <summary>Volume in the gaps [m³].</summary>
    public double GapVolume { get; init; }

    /// <summary>Volume drawn from the pots so far [m³].</summary>
    public double Drawn { get; init; }

    /// <summary>Volume that has left at the vents' ends so far [m³].</summary>
    public double Drained { get; init; }

    /// <summary>Resin drawn from the pots, less resin out of the vents' ends, less what stands in lines, gaps and cloth, over resin drawn [-]; 0 before any is drawn.</summary>
    public required double MassBalanceError { get; init; }
}

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

namespace InfusionSim.Physics.Flow;

/// <summary>The panel at one value of the drive clock. Arrays run [rows × columns], x fastest.</summary>
public sealed class FillState
{
    /// <summary>Drive clock [-].</summary>
    public required double Clock { get; init; }

    /// <summary>How full each cell is [-], 0 to 1; 0 without cloth.</summary>
    public required double[] Saturation { get; init; }

    /// <summary>Pressure above the bag's over the driving pressure, accumulated over the clock, in each cell [-].</summary>
    public required double[] AccumulatedPressure { get; init; }

    /// <summary>Pressure above the bag's over the driving pressure [-], 0 to 1; null unless asked for.</summary>
    public double[]? Pressure { get; init; }

    /// <summary>Share of the pore volume that is full [-].</summary>
    public required double FilledFraction { get; init; }

    /// <summary>Volume in through each feed so far [m³].</summary>
    public required IReadOnlyList<double> ResinIn { get; init; }

    /// <summary>Volume out through each vent so far [m³].</summary>
    public required IReadOnlyList<double> ResinOut { get; init; }

    /// <summary>Resin in, less resin out, less resin in the cells, over resin in [-]; 0 before any resin is in.</summary>
    public required double MassBalanceError { get; init; }
}

using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Clock;

/// <summary>The vacuum under the bag and the air above it.</summary>
/// <param name="Pressure">Absolute pressure under the bag [Pa].</param>
/// <param name="Ambient">Absolute pressure of the air in the shop [Pa], above <paramref name="Pressure"/>.</param>
public sealed record Bag(double Pressure, double Ambient)
{
    /// <summary>Changes of the vacuum, in the order in which they are made.</summary>
    public IReadOnlyList<BagStep> Steps { get; init; } = [];

    /// <summary>What leaks in; null when nobody has looked.</summary>
    public GasLeak? Leak { get; init; }

    /// <summary>The pump; null when nothing is known of it.</summary>
    public VacuumPump? Pump { get; init; }

    /// <summary>Volume that the pump draws down: pores, folds of the bag, hoses and catch pot [m³]; null when it is not known.</summary>
    public double? DrawnVolume { get; init; }
}

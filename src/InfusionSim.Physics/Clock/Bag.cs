using InfusionSim.Physics.Clamps;

namespace InfusionSim.Physics.Clock;

/// <summary>The vacuum under the bag and the air above it.</summary>
/// <param name="Pressure">Absolute pressure under the bag [Pa].</param>
/// <param name="Ambient">Absolute pressure of the air in the shop [Pa], above <paramref name="Pressure"/>.</param>
public sealed record Bag(double Pressure, double Ambient)
{
    /// <summary>Changes of the vacuum, in the order in which they are made.</summary>
    public IReadOnlyList<BagStep> Steps { get; init; } = [];
}

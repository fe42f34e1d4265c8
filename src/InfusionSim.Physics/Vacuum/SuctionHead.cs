using InfusionSim.Physics.Gravity;

namespace InfusionSim.Physics.Vacuum;

/// <summary>What lifting resin out of a pot costs, and how high the air can lift it.</summary>
/// <remarks>Hydrostatics, Δp = ρ g h, with standard gravity 9.80665 m/s². Textbook knowledge.</remarks>
public static class SuctionHead
{
    /// <summary>Pressure that a column takes [Pa]; below 0 when the pot stands above.</summary>
    /// <param name="density">Density of the resin [kg/m³].</param>
    /// <param name="height">Height that it is lifted [m].</param>
    public static double Drop(double density, double height) => density * GravityHead.StandardGravity * height;

    /// <summary>Greatest height that a difference of pressure lifts resin [m].</summary>
    /// <param name="density">Density of the resin [kg/m³], above 0.</param>
    /// <param name="difference">Air less bag [Pa], at least 0.</param>
    public static double HighestLift(double density, double difference)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(density);
        return difference / (density * GravityHead.StandardGravity);
    }
}

using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Gravity;

/// <summary>How much of the drive a metre of resin column takes: ρ g / Δp.</summary>
/// <remarks>
/// With it the separation of where from when ends: on a slope the path of the front depends on the weight of the resin and on the
/// vacuum, so another resin or bag is another fill. Viscosity still only changes the clock.
/// </remarks>
/// <param name="PerMetre">Share of the driving pressure that one metre of height takes [1/m], at least 0.</param>
public sealed record GravityHead(double PerMetre)
{
    /// <summary>Standard acceleration of free fall [m/s²] (3rd General Conference on Weights and Measures, 1901, from memory).</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>How high the drive lifts the resin above the level in its pot [m].</summary>
    public double Climb => 1 / PerMetre;

    /// <summary>The head of a resin under a bag.</summary>
    /// <param name="resin">The resin; density above 0.</param>
    /// <param name="bag">The bag; ambient pressure above the pressure under the bag.</param>
    public static GravityHead Of(Resin resin, Bag bag)
    {
        ArgumentNullException.ThrowIfNull(resin);
        ArgumentNullException.ThrowIfNull(bag);
        return new(resin.Density * StandardGravity / (bag.Ambient - bag.Pressure));
    }
}

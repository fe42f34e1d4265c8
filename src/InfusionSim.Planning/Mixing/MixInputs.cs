using InfusionSim.Physics.Resins;

namespace InfusionSim.Planning.Mixing;

/// <summary>What is known of the resin when it is mixed.</summary>
/// <param name="Density">Density of the mixed resin [kg/m³], above 0.</param>
/// <param name="MixToOpen">From mixing until the first feed opens [s], at least 0.</param>
/// <param name="Wishes">How somebody wants to mix.</param>
public sealed record MixInputs(double Density, double MixToOpen, MixWishes Wishes)
{
    /// <summary>How much hardener belongs to the resin; null where it is not known.</summary>
    public MixRatio? Ratio { get; init; }

    /// <summary>How the resin cures, with its heat; null where it is not known, then nothing is said of the warmth of a pot.</summary>
    public CureKinetics? Kinetics { get; init; }

    /// <summary>Temperature of the shop and of the resin when it is mixed [K]; null where nobody named it.</summary>
    public double? ShopTemperature { get; init; }
}

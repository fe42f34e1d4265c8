namespace InfusionSim.Physics.Resins;

/// <summary>The heat that a curing resin sets free.</summary>
/// <param name="OfReaction">Heat of the whole reaction [J/kg of mixed resin], above 0.</param>
/// <param name="Capacity">Heat capacity of the mixed resin [J/(kg·K)], above 0.</param>
public sealed record CureHeat(double OfReaction, double Capacity)
{
    /// <summary>How much warmer the resin gets when no heat leaves it [K].</summary>
    public double AdiabaticRise => OfReaction / Capacity;
}

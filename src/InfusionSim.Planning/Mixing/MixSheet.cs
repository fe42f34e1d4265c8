namespace InfusionSim.Planning.Mixing;

/// <summary>How much to mix for one panel, and when to pour it.</summary>
/// <param name="Need">Where the resin stays.</param>
/// <param name="Reserve">Mass that is mixed on top of it [kg].</param>
/// <param name="PotRests">Mass that stays in the pots [kg].</param>
/// <param name="Pots">The pots, in the order in which the feeds name them.</param>
/// <param name="Ratio">How much hardener belongs to the resin; null where it is not known.</param>
public sealed record MixSheet(ResinNeed Need, double Reserve, double PotRests, IReadOnlyList<PotPlan> Pots, MixRatio? Ratio)
{
    /// <summary>Mass of resin and hardener together [kg].</summary>
    public double Mixed => Need.Drawn + Reserve + PotRests;
}

namespace InfusionSim.Planning.Mixing;

/// <summary>How somebody wants to mix and pour.</summary>
/// <param name="ReserveFraction">Share that is mixed on top of what is drawn [-], at least 0.</param>
/// <param name="PotRest">What stays in each pot [kg], at least 0.</param>
/// <param name="LargestBatch">Most that is mixed and poured at once [kg], above 0; null lets the heat of the pot decide where it is known.</param>
/// <param name="VentsOpenAfter">How long open vents go on drawing resin after the panel is full [s], at least 0.</param>
/// <param name="PotCooling">Heat a full pot gives off for each degree that it is warmer than the shop [W/K]; null for <see cref="StillAirCooling"/>.</param>
/// <param name="WarmestPot">How warm a pot may become while resin is drawn from it [K].</param>
public sealed record MixWishes(
    double ReserveFraction, double PotRest, double? LargestBatch, double VentsOpenAfter, double? PotCooling, double WarmestPot);

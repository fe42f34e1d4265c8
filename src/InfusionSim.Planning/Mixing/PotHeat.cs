using InfusionSim.Physics.Resins;

namespace InfusionSim.Planning.Mixing;

/// <summary>How warm a batch gets in its pot, reckoned for a pot that stays as full as it was poured: on the safe side.</summary>
/// <param name="Mass">Mass of the batch [kg].</param>
/// <param name="Cooling">Heat the pot gives off for each degree that it is warmer than the shop [W/K].</param>
/// <param name="Shop">Temperature of the shop and of the resin when it is mixed [K].</param>
/// <param name="Stay">How long the batch stands in the pot, from mixing until it has been drawn in the slow case [s].</param>
/// <param name="Warmest">Highest temperature in that time [K].</param>
/// <param name="Bearable">Highest temperature that was wished for [K].</param>
/// <param name="LeftStanding">Highest temperature when nobody draws from it [K].</param>
/// <param name="GelsLeftStanding">When it gels in the pot when nobody draws from it, from mixing [s].</param>
public sealed record PotHeat(
    double Mass, double Cooling, double Shop, double Stay, double Warmest, double Bearable, double LeftStanding, double GelsLeftStanding)
{
    /// <summary>Whether the pot stays as cool as was wished for.</summary>
    public bool IsBearable => Warmest <= Bearable;

    /// <summary>Whether it gets too hot while resin is drawn from it for a number to mean anything.</summary>
    public bool RunsAway => Warmest > PotExotherm.RunawayAbove;

    /// <summary>Whether it gets too hot when nobody draws from it for a number to mean anything.</summary>
    public bool RunsAwayLeftStanding => LeftStanding > PotExotherm.RunawayAbove;

    /// <summary>Reckons a batch.</summary>
    /// <param name="inputs">What is known of the resin; its kinetics with their heat and the temperature of the shop among it.</param>
    /// <param name="mass">Mass of the batch [kg], above 0.</param>
    /// <param name="stay">How long it stands in the pot, from mixing [s], at least 0.</param>
    public static PotHeat Of(MixInputs inputs, double mass, double stay)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        if (inputs is not { Kinetics.Heat: not null, ShopTemperature: double shop }) throw new ArgumentException("The heat of a pot needs kinetics with their heat and the temperature of the shop.", nameof(inputs));
        double cooling = inputs.Wishes.PotCooling ?? StillAirCooling.Of(mass, inputs.Density);
        PotExotherm pot = new(inputs.Kinetics, mass, cooling, shop, shop);
        // From the temperature of the shop it warms up to one peak and cools down from there.
        double warmest = stay < pot.PeakTime ? pot.TemperatureAt(stay) : pot.PeakTemperature;
        return new(mass, cooling, shop, stay, warmest, inputs.Wishes.WarmestPot, pot.PeakTemperature, pot.GelTime);
    }
}

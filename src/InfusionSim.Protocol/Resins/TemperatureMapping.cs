using InfusionSim.Physics.Resins;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Turns the warmth of the shop into what the physics takes.</summary>
internal static class TemperatureMapping
{
    /// <summary>The temperatures that the resin sees; null where the plan names none.</summary>
    public static TemperatureCourse? ToCourse(Shop? shop) => shop switch
    {
        { Temperatures.Count: > 0 } => new(
            [.. shop.Temperatures.Select(row => UnitConversion.SecondsFromMin(row.AtMin))],
            [.. shop.Temperatures.Select(row => UnitConversion.KelvinFromDegC(row.TemperatureDegC))]),
        { HasTemperatureDegC: true } => new(UnitConversion.KelvinFromDegC(shop.TemperatureDegC)),
        _ => null,
    };

    /// <summary>The law of a number that was measured at one temperature.</summary>
    /// <param name="activationKjPerMol">Its activation; null for the rule of thumb.</param>
    /// <param name="atDegC">The temperature; null for that at the opening of the first feed.</param>
    /// <param name="course">The temperatures that the resin sees.</param>
    public static TemperatureLaw ToLaw(double? activationKjPerMol, double? atDegC, TemperatureCourse? course)
    {
        double reference = atDegC is double celsius ? UnitConversion.KelvinFromDegC(celsius) : course?.At(0) ?? UnitConversion.KelvinFromDegC(ShopDefaults.TemperatureDegC);
        return activationKjPerMol is double activation ? new ArrheniusLaw(reference, UnitConversion.JPerMolFromKjPerMol(activation)) : new HalvingLaw(reference);
    }
}

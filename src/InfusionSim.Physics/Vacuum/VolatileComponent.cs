namespace InfusionSim.Physics.Vacuum;

/// <summary>A component of the resin that may boil.</summary>
/// <remarks>
/// Over the resin it has the share of its own vapour pressure that its mole fraction is (Raoult's law, from memory): good for a component much like
/// the rest, such as styrene in its resin; of water in epoxy it is an estimate that may be several times off. The data sheet prevails.
/// </remarks>
/// <param name="Kind">What it is.</param>
/// <param name="MoleFraction">Share of the molecules of the liquid [-], 0 to 1.</param>
public sealed record VolatileComponent(VolatileKind Kind, double MoleFraction)
{
    // Both fits as public tables quote them after NIST (constants and ranges from memory); styrene at 25 °C is within 3 % of handbooks.
    private static readonly AntoineEquation OfStyrene = new(4.0593, 1459.909, -59.551, 305.6, 355.3);

    private static readonly AntoineEquation OfWater = new(4.6543, 1435.264, -64.848, 256, 373);

    /// <summary>Vapour pressure of the pure component.</summary>
    public AntoineEquation Pure => Kind switch
    {
        VolatileKind.Styrene => OfStyrene,
        VolatileKind.Water => OfWater,
        _ => throw new InvalidOperationException($"{Kind} is no component known here."),
    };

    /// <summary>Its part of the pressure of the vapour over the resin [Pa].</summary>
    /// <param name="temperature">Temperature of the resin [K].</param>
    public double PressureAt(double temperature) => MoleFraction * Pure.PressureAt(temperature);
}

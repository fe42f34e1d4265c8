namespace InfusionSim.Physics.Vacuum;

/// <summary>What of a resin may boil, and how warm the resin gets.</summary>
/// <param name="Components">The components, each named once.</param>
/// <param name="Temperature">Highest temperature of the resin while it is liquid [K].</param>
public sealed record Volatiles(IReadOnlyList<VolatileComponent> Components, double Temperature)
{
    /// <summary>Absolute pressure below which bubbles of vapour grow in the resin [Pa]: the parts of its components together.</summary>
    public double BubblePressure => Components.Sum(component => component.PressureAt(Temperature));

    /// <summary>Whether the vapour pressure of a component is extrapolated at this temperature.</summary>
    public bool IsExtrapolated => Components.Any(component => !component.Pure.Covers(Temperature));
}

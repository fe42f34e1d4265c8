namespace InfusionSim.Physics.Clock;

/// <summary>What flows.</summary>
/// <param name="Viscosity">Viscosity [Pa·s], 0.001 to 100.</param>
/// <param name="GelTime">From mixing until it gels [s].</param>
/// <param name="MixToOpen">From mixing until the first feed opens [s].</param>
/// <param name="Density">Density of the mixed resin [kg/m³].</param>
public sealed record Resin(double Viscosity, double GelTime, double MixToOpen, double Density);

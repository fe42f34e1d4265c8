namespace InfusionSim.Physics.Bleeding;

/// <summary>How much resin has left through a vent up to a time after the end of the fill.</summary>
/// <param name="Time">From the opening of the first feed [s].</param>
/// <param name="Volume">Volume since the end of the fill [m³].</param>
public readonly record struct BleedPoint(double Time, double Volume);

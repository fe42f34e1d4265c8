namespace InfusionSim.Planning.Resins;

/// <summary>The temperatures that a resin card is good for.</summary>
/// <param name="Lowest">Lowest temperature [K], above 0.</param>
/// <param name="Highest">Highest temperature [K], above <paramref name="Lowest"/>.</param>
public sealed record TemperatureRange(double Lowest, double Highest);

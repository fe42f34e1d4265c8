namespace InfusionSim.Planning.Resins;

/// <summary>The temperature at which a resin is full soonest with the wished gel margin.</summary>
/// <param name="KeepsMargin">Whether it keeps that margin; where no temperature does, this is the one with the largest margin.</param>
/// <param name="Temperature">The temperature [K].</param>
/// <param name="FillTime">Fill time there [s]; null when it gels first.</param>
/// <param name="GelMargin">Gel margin there [-].</param>
/// <param name="Lowest">Lowest temperature looked at [K].</param>
/// <param name="Highest">Highest temperature looked at [K].</param>
public sealed record BestTemperature(bool KeepsMargin, double Temperature, double? FillTime, double GelMargin, double Lowest, double Highest);

namespace InfusionSim.Planning.Resins;

/// <summary>
/// The temperature at which a resin is full soonest with the wished gel margin, and at which no volatile that its card names boils under the vacuum.
/// </summary>
/// <param name="KeepsMargin">Whether it keeps that margin; where no temperature does, this is the one with the largest margin.</param>
/// <param name="Temperature">The temperature [K].</param>
/// <param name="FillTime">Fill time there [s]; null when it gels first.</param>
/// <param name="GelMargin">Gel margin there [-].</param>
/// <param name="Lowest">Lowest temperature looked at [K].</param>
/// <param name="Highest">Highest temperature looked at [K].</param>
public sealed record BestTemperature(bool KeepsMargin, double Temperature, double? FillTime, double GelMargin, double Lowest, double Highest)
{
    /// <summary>Whether boiling, not the card, sets the highest temperature looked at.</summary>
    public bool IsBoundByBoiling { get; init; }

    /// <summary>Whether it boils at every temperature of the card; then this is the lowest of them, and no advice.</summary>
    public bool BoilsThroughout { get; init; }
}

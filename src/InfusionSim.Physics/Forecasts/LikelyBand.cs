namespace InfusionSim.Physics.Forecasts;

/// <summary>What two shots in three do when the permeability of the cloth as a whole is uncertain by a factor.</summary>
/// <param name="PermeabilityFactor">Times or divided by [-], at least 1.</param>
/// <param name="FillTimeFrom">Fast end of the fill time [s]; null when it does not fill even there.</param>
/// <param name="FillTimeTo">Slow end of the fill time [s]; null when it gels first or stops short there.</param>
/// <param name="GelMarginFrom">Gel margin of the slow end [-]; null when it stops short.</param>
/// <param name="GelMarginTo">Gel margin of the fast end [-]; null when it stops short.</param>
public sealed record LikelyBand(
    double PermeabilityFactor, double? FillTimeFrom, double? FillTimeTo, double? GelMarginFrom, double? GelMarginTo);

namespace InfusionSim.Physics.Forecasts;

/// <summary>What the laminator asks of a fill; the outcome goes by these and by nothing else.</summary>
/// <param name="LargestDrySpot">Largest dry spot that may stay [m²]; by default 100 mm² (common practice).</param>
/// <param name="SmallestGelMargin">Least ratio of the drive clock at gel to that at the end of the fill [-]; by default 1.</param>
/// <param name="MostResinOut">Most resin that may leave through the vents [m³]; by default no limit.</param>
public sealed record Goals(double LargestDrySpot = 1e-4, double SmallestGelMargin = 1, double MostResinOut = double.PositiveInfinity);

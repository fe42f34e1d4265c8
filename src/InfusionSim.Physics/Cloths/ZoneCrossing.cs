namespace InfusionSim.Physics.Cloths;

/// <summary>Where a straight way crosses the edge of a zone.</summary>
/// <param name="Share">How far along the way [-], 0 to 1.</param>
/// <param name="AcrossX">Component along x of a unit vector square to the edge [-].</param>
/// <param name="AcrossY">Component along y of a unit vector square to the edge [-].</param>
internal readonly record struct ZoneCrossing(double Share, double AcrossX, double AcrossY);

namespace InfusionSim.Plots.Contours;

/// <summary>A place on the drawing.</summary>
/// <param name="XMm">Distance to the right of the drawing's origin [mm].</param>
/// <param name="YMm">Distance above the drawing's origin [mm].</param>
internal readonly record struct Spot(double XMm, double YMm);

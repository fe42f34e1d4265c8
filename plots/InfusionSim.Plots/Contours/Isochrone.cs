namespace InfusionSim.Plots.Contours;

/// <summary>Where the front stands at one time.</summary>
/// <param name="TimeS">The time [s].</param>
/// <param name="Lines">Its lines, cut to the wetted cloth; a line that closes repeats its first point [mm].</param>
internal sealed record Isochrone(double TimeS, IReadOnlyList<IReadOnlyList<Spot>> Lines);

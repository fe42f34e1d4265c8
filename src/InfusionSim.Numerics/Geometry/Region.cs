namespace InfusionSim.Numerics.Geometry;

/// <summary>An area of the plane: an outline less its cut-outs.</summary>
/// <param name="Outline">The outer edge.</param>
/// <param name="Cutouts">Holes inside the outline, apart from each other; may be empty.</param>
public sealed record Region(Ring Outline, IReadOnlyList<Ring> Cutouts);

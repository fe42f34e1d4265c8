namespace InfusionSim.Physics.Panels;

/// <summary>An open channel along a path: beside the edge, at a butt joint, under a bag that bridges a corner.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Path">Where it runs, at least two points.</param>
/// <param name="Width">Width in the plane [m].</param>
/// <param name="Height">Height [m]; null for the thickness of the laminate there.</param>
public sealed record Gap(string Name, LinePath Path, double Width, double? Height);

namespace InfusionSim.Physics.Panels;

/// <summary>Round holes through a plain core, alike and on a square pattern.</summary>
/// <param name="Diameter">Diameter of a hole [m], above 0.</param>
/// <param name="Pitch">Distance from one hole to the next, middle to middle [m], above the diameter.</param>
public sealed record Holes(double Diameter, double Pitch);

namespace InfusionSim.Physics.Panels;

/// <summary>A ply of a lay-up, or several alike on each other; its numbers are those under the bag.</summary>
/// <param name="Thickness">Thickness of one ply [m].</param>
/// <param name="Permeability">How easily resin runs through it; its angle is that of the ply as laid.</param>
/// <param name="Count">How many lie on each other [-], at least 1.</param>
public sealed record Ply(double Thickness, Permeability Permeability, int Count = 1);

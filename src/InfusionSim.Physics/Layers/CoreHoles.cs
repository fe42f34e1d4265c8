namespace InfusionSim.Physics.Layers;

/// <summary>Round holes drilled through a core on a square pattern.</summary>
/// <param name="Diameter">Diameter of a hole [m].</param>
/// <param name="Pitch">Distance from one to the next, middle to middle [m].</param>
public sealed record CoreHoles(double Diameter, double Pitch);

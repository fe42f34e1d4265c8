namespace InfusionSim.Numerics.Stencils;

/// <summary>A conductance between two nodes of which at least one is a line node.</summary>
/// <param name="First">Index of one node.</param>
/// <param name="Second">Index of the other, not the same.</param>
/// <param name="Conductance">Conductance between them [m³], at least 0.</param>
public readonly record struct NodeLink(int First, int Second, double Conductance);

namespace InfusionSim.Numerics.Stencils;

/// <summary>A node that another one conducts to.</summary>
/// <param name="Node">Index of the neighbour.</param>
/// <param name="Conductance">Conductance to it [m³], above 0.</param>
public readonly record struct NodeNeighbour(int Node, double Conductance);

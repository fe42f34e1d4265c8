namespace InfusionSim.Physics.Lines;

/// <summary>The way from the middle of a cell to that of its right or upper neighbour.</summary>
/// <param name="Cell">Index of the left or lower cell.</param>
/// <param name="IsNorth">Whether it runs up rather than right.</param>
internal readonly record struct LatticeEdge(int Cell, bool IsNorth);

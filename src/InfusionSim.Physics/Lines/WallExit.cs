namespace InfusionSim.Physics.Lines;

/// <summary>A slanted way of turned cloth that ends on an edge of the cloth.</summary>
/// <param name="Cell">Index of the cell it starts from.</param>
/// <param name="Conductance">Conductance from its middle to the edge [m³].</param>
/// <param name="Way">The way from the middle to the edge.</param>
/// <param name="Wall">The stretch of the edge that it stands for, about the place where it ends.</param>
/// <param name="IsNextCell">Whether it would lead to a cell that touches this one, so that the cell lies beside the edge.</param>
internal readonly record struct WallExit(int Cell, double Conductance, Segment Way, Segment Wall, bool IsNextCell);

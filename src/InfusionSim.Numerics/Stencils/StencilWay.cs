namespace InfusionSim.Numerics.Stencils;

/// <summary>One direction in which cells of a layer conduct to another cell of it: the offset, and the conductance from each cell along it.</summary>
/// <param name="Right">Columns to the right that the other cell lies [-].</param>
/// <param name="Up">Rows above that the other cell lies [-]; above 0, or 0 with <paramref name="Right"/> above 0.</param>
/// <param name="Conductance">Conductance from each cell to the one at the offset [m³], at least 0; 0 where that lies outside the grid. [layers ×
/// rows × columns], x fastest.</param>
public sealed record StencilWay(int Right, int Up, double[] Conductance);

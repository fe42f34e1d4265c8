using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>One connected part of the region inside one square that an edge cuts, with the cell that owns it.</summary>
/// <param name="Square">Index of the square it lies in.</param>
/// <param name="Owner">Index of the cell that owns it: the square itself, or the host it was merged into.</param>
/// <param name="Area">Its area [m²].</param>
/// <param name="Border">Its outer border, anticlockwise.</param>
/// <param name="Holes">Borders of the holes inside it, clockwise; mostly none.</param>
public sealed record CellPart(int Square, int Owner, double Area, Ring Border, IReadOnlyList<Ring> Holes);

namespace InfusionSim.Numerics.Lattice;

/// <summary>A cell of an endless lattice, counted from a reference cell.</summary>
/// <param name="Column">Cells to the right of the reference cell [-].</param>
/// <param name="Row">Cells above the reference cell [-].</param>
public readonly record struct LatticeCell(int Column, int Row);

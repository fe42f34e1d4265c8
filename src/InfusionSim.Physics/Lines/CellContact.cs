namespace InfusionSim.Physics.Lines;

/// <summary>Where a feed or vent touches one cell.</summary>
/// <param name="Cell">Index of the cell.</param>
/// <param name="Conductance">Conductance between the cell and the line [m³]; kept for a membrane too, though it passes no resin.</param>
/// <param name="FullWhenWet">True on the outline, where the line lies beyond the cell and is wet once the cell is full; false inside, where it is wet once the cell is half full.</param>
public readonly record struct CellContact(int Cell, double Conductance, bool FullWhenWet);

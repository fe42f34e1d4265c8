namespace InfusionSim.Physics.Lines;

/// <summary>Where a feed or vent touches one cell.</summary>
/// <param name="Cell">Index of the cell.</param>
/// <param name="Conductance">Conductance between the cell and the line [m³]; kept for a membrane too, though it passes no resin; 0 for a cell in the midst of those under a fitting.</param>
/// <param name="FullWhenWet">True where the line lies at the end of the cell's volume (on the outline, and along a line inside that parts the cells beside it) and is wet once the cell is full; false where it lies under the cell's middle (a fitting, a membrane inside) and is wet once the cell is half full.</param>
public readonly record struct CellContact(int Cell, double Conductance, bool FullWhenWet)
{
    /// <summary>
    /// Whether the line passes through the cell or beside it; false where only a slanted way of turned cloth leads there from a cell farther off.
    /// </summary>
    public bool IsBeside { get; init; } = true;

    /// <summary>Line node it hangs on; −1 where the line is held at one fixed pressure.</summary>
    public int LineNode { get; init; } = -1;
}

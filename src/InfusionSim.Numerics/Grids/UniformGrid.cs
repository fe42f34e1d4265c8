using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>Equal squares over a rectangle. Cell (i, j) has the index j·Columns + i: row by row from the bottom, x fastest.</summary>
/// <param name="Origin">Lower left corner of the first square [m].</param>
/// <param name="CellSize">Side of a square [m], above 0.</param>
/// <param name="Columns">Squares in a row [-], at least 1.</param>
/// <param name="Rows">Rows [-], at least 1.</param>
public sealed record UniformGrid(Point2 Origin, double CellSize, int Columns, int Rows)
{
    /// <summary>Number of squares [-].</summary>
    public int CellCount => Columns * Rows;

    /// <summary>Index of the square in a column and a row [-].</summary>
    /// <param name="column">Column from 0 at the left.</param>
    /// <param name="row">Row from 0 at the bottom.</param>
    public int IndexOf(int column, int row) => row * Columns + column;

    /// <summary>Column of a square [-].</summary>
    /// <param name="cell">Index of the square.</param>
    public int ColumnOf(int cell) => cell % Columns;

    /// <summary>Row of a square [-].</summary>
    /// <param name="cell">Index of the square.</param>
    public int RowOf(int cell) => cell / Columns;

    /// <summary>Middle of a square [m].</summary>
    /// <param name="cell">Index of the square.</param>
    public Point2 CentreOf(int cell) =>
        new(Origin.X + (ColumnOf(cell) + 0.5) * CellSize, Origin.Y + (RowOf(cell) + 0.5) * CellSize);
}

namespace InfusionSim.Numerics.Stencils;

/// <summary>Conductances between the cells of a grid and their four neighbours, and from each cell to a fixed pressure: the matrix A of (A w)ᵢ = Σⱼ Tᵢⱼ (wᵢ − wⱼ) + gᵢ wᵢ.</summary>
/// <remarks>All conductances are at least 0, so A is a symmetric M-matrix. Arrays run [rows × columns], x fastest. Unit of a conductance here: [m³] (permeability × thickness × width / distance).</remarks>
public sealed class FivePointOperator
{
    /// <summary>Makes an operator without conductances.</summary>
    /// <param name="columns">Cells in a row [-], at least 1.</param>
    /// <param name="rows">Rows [-], at least 1.</param>
    public FivePointOperator(int columns, int rows)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        Columns = columns;
        Rows = rows;
        East = new double[columns * rows];
        North = new double[columns * rows];
        Anchor = new double[columns * rows];
    }

    /// <summary>Cells in a row [-].</summary>
    public int Columns { get; }

    /// <summary>Rows [-].</summary>
    public int Rows { get; }

    /// <summary>Number of cells [-].</summary>
    public int CellCount => Columns * Rows;

    /// <summary>Conductance between (i, j) and (i+1, j) [m³]; 0 in the last column.</summary>
    public double[] East { get; }

    /// <summary>Conductance between (i, j) and (i, j+1) [m³]; 0 in the last row.</summary>
    public double[] North { get; }

    /// <summary>Sum of the conductances from a cell to feeds and open vents [m³].</summary>
    public double[] Anchor { get; }

    /// <summary>Sum of all conductances of a cell: the diagonal of A [m³].</summary>
    /// <param name="cell">Index of the cell.</param>
    public double DiagonalOf(int cell)
    {
        double sum = Anchor[cell] + East[cell] + North[cell];
        if (cell % Columns != 0) sum += East[cell - 1];
        if (cell >= Columns) sum += North[cell - Columns];
        return sum;
    }
}

namespace InfusionSim.Numerics.Multigrid;

/// <summary>One grid of the hierarchy: couplings to the eight neighbours, the way to the next coarser grid, and the fields a cycle works on.</summary>
/// <remarks>
/// Couplings are stored with the sign of a conductance (minus the matrix entry). A cell that takes no part has the
/// diagonal 0, and every pass leaves its value at 0, as a fixed pressure of 0 would.
/// Each fine cell is interpolated from the coarse points at its lower left, lower right, upper left and upper right;
/// coarse point (I, J) is fine cell (2I, 2J), so cells of even rows need only the lower two.
/// </remarks>
internal sealed class MultigridLevel
{
    /// <summary>Makes a level without couplings.</summary>
    /// <param name="columns">Cells in a row.</param>
    /// <param name="rows">Rows.</param>
    /// <param name="hasDiagonalNeighbours">Whether cells couple to their diagonal neighbours: on every grid but the finest.</param>
    public MultigridLevel(int columns, int rows, bool hasDiagonalNeighbours)
    {
        Layout = new PaddedLayout(columns, rows);
        Diagonal = new(Layout);
        InverseDiagonal = new(Layout);
        East = new(Layout);
        North = new(Layout);
        if (hasDiagonalNeighbours)
        {
            NorthEast = new(Layout);
            NorthWest = new(Layout);
        }

        LowerLeft = new(Layout);
        LowerRight = new(Layout);
        UpperLeft = new(Layout);
        UpperRight = new(Layout);
        Value = new(Layout);
        Load = new(Layout);
        Active = new RowSpans(rows, Layout.PaddedColumns, PaddedLayout.Lanes);
        Changed = new CellSet(columns, rows);
    }

    /// <summary>Where the cells lie.</summary>
    public PaddedLayout Layout { get; }

    /// <summary>Matrix diagonal; 0 where a cell takes no part.</summary>
    public Field<float> Diagonal { get; }

    /// <summary>One over the diagonal; 0 where a cell takes no part.</summary>
    public Field<float> InverseDiagonal { get; }

    /// <summary>Coupling to the right neighbour.</summary>
    public Field<float> East { get; }

    /// <summary>Coupling to the upper neighbour.</summary>
    public Field<float> North { get; }

    /// <summary>Coupling to the upper right neighbour; null on the finest grid.</summary>
    public Field<float>? NorthEast { get; }

    /// <summary>Coupling to the upper left neighbour; null on the finest grid.</summary>
    public Field<float>? NorthWest { get; }

    /// <summary>Weight of the coarse point at the lower left, or of the point itself.</summary>
    public Field<float> LowerLeft { get; }

    /// <summary>Weight of the coarse point at the lower right.</summary>
    public Field<float> LowerRight { get; }

    /// <summary>Weight of the coarse point at the upper left; 0 in even rows.</summary>
    public Field<float> UpperLeft { get; }

    /// <summary>Weight of the coarse point at the upper right; 0 in even rows.</summary>
    public Field<float> UpperRight { get; }

    /// <summary>Unknowns of a cycle.</summary>
    public Field<float> Value { get; }

    /// <summary>Right-hand side of a cycle.</summary>
    public Field<float> Load { get; }

    /// <summary>Columns of each row that hold cells which take part, in whole vectors; they only widen until the hierarchy is reset.</summary>
    public RowSpans Active { get; }

    /// <summary>Cells whose couplings are out of date.</summary>
    public CellSet Changed { get; }
}

namespace InfusionSim.Numerics.Multigrid;

/// <summary>One stack of grids of the hierarchy: couplings to the eight neighbours in the layer and to the layers above and below, the way to the
/// next coarser grid, and the fields a cycle works on.</summary>
/// <remarks>
/// Couplings are stored with the sign of a conductance (minus the matrix entry). A cell that takes no part has the
/// diagonal 0, and every pass leaves its value at 0, as a fixed pressure of 0 would.
/// Each fine cell is interpolated from the coarse points at its lower left, lower right, upper left and upper right of its own layer;
/// with coarsening by two in both directions coarse point (I, J) is fine cell (2I, 2J), so cells of even rows need only the lower two.
/// </remarks>
internal sealed class MultigridLevel
{
    /// <summary>Makes a level without couplings.</summary>
    /// <param name="layout">Where the cells lie.</param>
    /// <param name="hasDiagonalNeighbours">Whether cells couple to their diagonal neighbours: on every grid but mostly the finest.</param>
    /// <param name="hasLines">Whether line nodes are joined to cells.</param>
    /// <param name="isCoarse">Whether its couplings are computed from a finer grid.</param>
    public MultigridLevel(PaddedLayout layout, bool hasDiagonalNeighbours, bool hasLines = false, bool isCoarse = false)
    {
        Layout = layout;
        Diagonal = new(layout);
        Rest = layout.Layers == 1 ? Diagonal : new(layout);
        Slack = new(layout);
        InversePivot = new(layout);
        East = new(layout);
        North = new(layout);
        if (hasDiagonalNeighbours)
        {
            NorthEast = new(layout);
            NorthWest = new(layout);
        }

        if (isCoarse) RowSum = new(layout);
        if (isCoarse && layout.Layers > 1) Lost = new(layout);

        if (layout.Layers > 1) Above = new(layout);
        if (hasLines) LinkSum = new(layout);
        LowerLeft = new(layout);
        LowerRight = new(layout);
        UpperLeft = new(layout);
        UpperRight = new(layout);
        WeightSum = new(layout);
        Value = new(layout);
        Load = new(layout);
        Active = new RowSpans(layout.Rows, layout.PaddedColumns, PaddedLayout.Lanes);
        Changed = new CellSet(layout.Columns, layout.Rows, layout.Layers);
        ChangedColumns = layout.Layers == 1 ? Changed : new CellSet(layout.Columns, layout.Rows, 1);
    }

    /// <summary>Where the cells lie.</summary>
    public PaddedLayout Layout { get; }

    /// <summary>How the next coarser grid is made.</summary>
    public Coarsening Coarsening { get; set; } = Coarsening.Both;

    /// <summary>Matrix diagonal; 0 where a cell takes no part.</summary>
    public Field<float> Diagonal { get; }

    /// <summary>Matrix diagonal less the couplings to the layers above and below; the diagonal itself with one layer.</summary>
    public Field<float> Rest { get; }

    /// <summary>What of a cell's Rest leads to no neighbour stored here and to no line node: to feeds, vents and, on coarse grids, cells that
    /// take no part. Kept by itself, for next to couplings a million times as large it would be lost.</summary>
    public Field<float> Slack { get; }

    /// <summary>Rest less the couplings before rounding, without what leads through the thickness to cells that take no part; null on the finest
    /// grid.</summary>
    public Field<double>? RowSum { get; }

    /// <summary>What of a cell's Rest leads through the thickness to cells that take no part; null on the finest grid, where it is found anew each
    /// time, and with one layer.</summary>
    public Field<float>? Lost { get; }

    /// <summary>One over the pivot of a cell when its column is eliminated from the lowest layer up: over the diagonal with one layer; 0 where a
    /// cell takes no part.</summary>
    public Field<float> InversePivot { get; }

    /// <summary>Coupling to the right neighbour.</summary>
    public Field<float> East { get; }

    /// <summary>Coupling to the neighbour in the next row.</summary>
    public Field<float> North { get; }

    /// <summary>Coupling to the upper right neighbour; null where there is none.</summary>
    public Field<float>? NorthEast { get; }

    /// <summary>Coupling to the upper left neighbour; null where there is none.</summary>
    public Field<float>? NorthWest { get; }

    /// <summary>Coupling to the cell in the next layer; null with one layer.</summary>
    public Field<float>? Above { get; }

    /// <summary>Sum of a cell's couplings to line nodes, wet or dry; null where there are none. In double precision: links may be a thousand times the couplings beside them.</summary>
    public Field<double>? LinkSum { get; }

    /// <summary>Weight of the coarse point at the lower left, or of the point itself.</summary>
    public Field<float> LowerLeft { get; }

    /// <summary>Weight of the coarse point at the lower right.</summary>
    public Field<float> LowerRight { get; }

    /// <summary>Weight of the coarse point at the upper left; 0 in even rows.</summary>
    public Field<float> UpperLeft { get; }

    /// <summary>Weight of the coarse point at the upper right; 0 in even rows.</summary>
    public Field<float> UpperRight { get; }

    /// <summary>Sum of a cell's weights before rounding [-]: 1 where nothing leads to 0.</summary>
    public Field<float> WeightSum { get; }

    /// <summary>Unknowns of a cycle.</summary>
    public Field<float> Value { get; }

    /// <summary>Right-hand side of a cycle.</summary>
    public Field<float> Load { get; }

    /// <summary>Columns of each row that hold cells which take part in any layer, in whole vectors; they only widen until the hierarchy is reset.</summary>
    public RowSpans Active { get; }

    /// <summary>Cells whose couplings in the layer are out of date.</summary>
    public CellSet Changed { get; }

    /// <summary>Columns of cells whose couplings are out of date in some layer.</summary>
    public CellSet ChangedColumns { get; }

    /// <summary>Computes the pivots of the cells above one another from Rest and Above.</summary>
    /// <remarks>Written with what a pivot holds beyond the coupling to the layer above, so that strong couplings through the thickness do not
    /// swallow weak ones in the plane.</remarks>
    /// <param name="column">Column.</param>
    /// <param name="row">Row.</param>
    public unsafe void EliminateColumn(int column, int row)
    {
        // The part of a pivot that does not lead up, and the coupling from the layer below.
        double beyond = 0, below = 0;
        bool belowTakesPart = false;
        for (int layer = 0; layer < Layout.Layers; layer++)
        {
            int at = Layout.At(column, row, layer);
            float above = Above is null ? 0 : Above.Origin[at];
            if (Diagonal.Origin[at] > 0)
            {
                double fromBelow = belowTakesPart && below > 0 ? below * beyond / (below + beyond) : below;
                beyond = Rest.Origin[at] + fromBelow;
                double pivot = beyond + above;
                InversePivot.Origin[at] = pivot > 0 ? (float)(1 / pivot) : 0;
                belowTakesPart = true;
            }
            else
            {
                InversePivot.Origin[at] = 0;
                belowTakesPart = false;
            }

            below = above;
        }
    }

    /// <summary>The diagonal of a cell put together in double precision, from parts that are stored by themselves.</summary>
    /// <param name="at">Where the cell lies.</param>
    public unsafe double ExactDiagonal(int at)
    {
        double sum = CouplingSum(at) + Slack.Origin[at] + (LinkSum is null ? 0 : LinkSum.Origin[at]);
        if (Above is null) return sum;
        return sum + Above.Origin[at] + (at >= Layout.LayerStride ? Above.Origin[at - Layout.LayerStride] : 0);
    }

    /// <summary>Sum of a cell's couplings to its neighbours in the layer.</summary>
    /// <param name="at">Where the cell lies.</param>
    public unsafe double CouplingSum(int at)
    {
        int s = Layout.Stride;
        float* e = East.Origin, n = North.Origin;
        double sum = (double)e[at] + e[at - 1] + n[at] + n[at - s];
        if (NorthEast is null) return sum;
        float* ne = NorthEast.Origin, nw = NorthWest!.Origin;
        return sum + ne[at] + ne[at - s - 1] + nw[at] + nw[at - s + 1];
    }
}

namespace InfusionSim.Numerics.Multigrid;

/// <summary>What one cell of a column is offered by each coarse point, replaced by the weights once the column is balanced.</summary>
internal struct CellBalance
{
    /// <summary>Coupling to a coarse point, then its weight.</summary>
    public float LowerLeft, LowerRight, UpperLeft, UpperRight;

    /// <summary>All of the cell's couplings in its layer.</summary>
    public float Own;

    /// <summary>Coupling to the cell in the next layer.</summary>
    public float Above;

    /// <summary>Whether the cell takes part.</summary>
    public bool TakesPart;
}

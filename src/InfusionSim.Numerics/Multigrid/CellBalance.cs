using System.Runtime.Intrinsics;

namespace InfusionSim.Numerics.Multigrid;

/// <summary>What one cell of a column is offered by the coarse points round it, replaced by their weights once the column is balanced.</summary>
internal struct CellBalance
{
    /// <summary>Coupling to the coarse point at the lower left, lower right, upper left and upper right; then their weights.</summary>
    public Vector256<double> Corners;

    /// <summary>All of the cell's couplings in its layer.</summary>
    public double Own;

    /// <summary>Coupling to the cell in the next layer.</summary>
    public double Above;

    /// <summary>Whether the cell takes part.</summary>
    public bool TakesPart;
}

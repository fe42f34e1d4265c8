using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>A straight piece of the outline or of a cut-out that lies in one cell.</summary>
/// <param name="Cell">Index of the cell that owns the piece (for a merged sliver: its host).</param>
/// <param name="Start">Where it begins [m].</param>
/// <param name="End">Where it ends [m].</param>
/// <param name="RingIndex">0 for the outline, 1 for the first cut-out and so on.</param>
public readonly record struct EdgePiece(int Cell, Point2 Start, Point2 End, int RingIndex)
{
    /// <summary>Length of the piece [m].</summary>
    public double Length => Start.DistanceTo(End);
}

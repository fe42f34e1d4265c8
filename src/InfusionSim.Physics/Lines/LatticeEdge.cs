using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Lines;

/// <summary>The way from the middle of a cell to that of another one of its layer.</summary>
/// <param name="Cell">Index of the cell it starts from.</param>
/// <param name="Right">Columns to the right that the other lies.</param>
/// <param name="Up">Rows above that it lies; above 0, or 0 with <paramref name="Right"/> above 0.</param>
internal readonly record struct LatticeEdge(int Cell, int Right, int Up)
{
    /// <summary>
    /// Nearest to a middle that a line counts, as a share of the way [-]: bounds the ratio of conductances where a line runs through a middle.
    /// </summary>
    public const double LeastShare = 1e-3;

    /// <summary>Whether the two cells share a face.</summary>
    public bool IsThroughFace => Up + Math.Abs(Right) == 1;

    /// <summary>Whether it leads to the cell above.</summary>
    public bool IsNorth => Up == 1 && Right == 0;

    public int OtherCell(UniformGrid grid) => Cell + Up * grid.Columns + Right;

    /// <summary>Conductance of the first part of the way [m³].</summary>
    /// <param name="share">Length of the part over that of the way [-].</param>
    /// <param name="conductances">Conductances between the cells.</param>
    public double ConductanceTo(double share, LatticeOperator conductances) =>
        conductances.Way(Right, Up).Conductance[Cell] / Math.Max(share, LeastShare);

    public void Cut(LatticeOperator conductances) => conductances.Way(Right, Up).Conductance[Cell] = 0;
}

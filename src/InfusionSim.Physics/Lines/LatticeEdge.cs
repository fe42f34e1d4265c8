using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Lines;

/// <summary>The way from the middle of a cell to that of its right or upper neighbour.</summary>
/// <param name="Cell">Index of the left or lower cell.</param>
/// <param name="IsNorth">Whether it runs up rather than right.</param>
internal readonly record struct LatticeEdge(int Cell, bool IsNorth)
{
    /// <summary>Nearest to a middle that a line counts, as a share of the way [-]: bounds the ratio of conductances where a line runs through a middle.</summary>
    public const double LeastShare = 1e-3;

    public int OtherCell(UniformGrid grid) => Cell + (IsNorth ? grid.Columns : 1);

    /// <summary>Conductance of the first part of the way [m³].</summary>
    /// <param name="share">Length of the part over that of the way [-].</param>
    /// <param name="conductances">Conductances between the cells.</param>
    public double ConductanceTo(double share, LatticeOperator conductances) =>
        (IsNorth ? conductances.North : conductances.East)[Cell] / Math.Max(share, LeastShare);

    public void Cut(LatticeOperator conductances) => (IsNorth ? conductances.North : conductances.East)[Cell] = 0;
}

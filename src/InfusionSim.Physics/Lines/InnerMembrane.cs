using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Lines;

/// <summary>Contacts of a line inside the cloth that passes air but no resin: it blocks nothing and is wet with the cell it lies in.</summary>
internal static class InnerMembrane
{
    // On the boundary of two cells it lies in both.
    private const double BoundaryShare = 0.01;

    public static void Touch(IReadOnlyList<Segment> stretches, ContactTable contacts, CutCellGrid cells, ClothMap cloth, LatticeOperator conductances)
    {
        foreach (Segment stretch in stretches)
        {
            foreach ((LatticeEdge edge, double share) in EdgeCrossings.Of(stretch, cells, conductances))
            {
                if (share < 0.5 + BoundaryShare) contacts.AddUnder(edge.Cell, edge.ConductanceTo(share, conductances));
                if (share > 0.5 - BoundaryShare) contacts.AddUnder(edge.OtherCell(cells.Grid), edge.ConductanceTo(1 - share, conductances));
            }
        }

        foreach ((int cell, double conductance) in WallWays.Crossed(stretches, cells, cloth)) contacts.AddUnder(cell, conductance);
    }
}

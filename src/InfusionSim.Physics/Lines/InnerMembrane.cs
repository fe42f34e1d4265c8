using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Layers;

namespace InfusionSim.Physics.Lines;

/// <summary>Contacts of a line inside the cloth that passes air but no resin: it blocks nothing and is wet with the cell it lies in.</summary>
internal static class InnerMembrane
{
    // On the boundary of two cells it lies in both.
    private const double BoundaryShare = 0.01;

    /// <summary>Enters the contacts in one layer.</summary>
    /// <param name="stretches">Stretches of the line inside the cloth.</param>
    /// <param name="contacts">Contacts of the line in the layer.</param>
    /// <param name="sheet">The layer.</param>
    public static void Touch(IReadOnlyList<Segment> stretches, ContactTable contacts, LayerSheet sheet)
    {
        CutCellGrid cells = sheet.Cells;
        LatticeOperator conductances = sheet.Conductances;
        foreach (Segment stretch in stretches)
        {
            foreach ((LatticeEdge edge, double share) in EdgeCrossings.Of(stretch, cells, conductances))
            {
                if (!edge.IsThroughFace) continue;
                int other = edge.OtherCell(cells.Grid);
                if (share < 0.5 + BoundaryShare && sheet.IsOnTop(edge.Cell)) contacts.AddUnder(edge.Cell, edge.ConductanceTo(share, conductances));
                if (share > 0.5 - BoundaryShare && sheet.IsOnTop(other)) contacts.AddUnder(other, edge.ConductanceTo(1 - share, conductances));
            }
        }

        foreach ((int cell, double conductance) in WallWays.Crossed(stretches, cells, sheet.Cloth))
        {
            if (sheet.IsOnTop(cell)) contacts.AddUnder(cell, conductance);
        }
    }
}

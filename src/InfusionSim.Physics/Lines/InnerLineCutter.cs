using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Lines;

/// <summary>Contacts of lines inside the cloth that pass resin. They have no width in the flow: each way between two cells that a line crosses is cut, and its two ends are joined to the line instead.</summary>
/// <remarks>
/// Each end gets the conductance of the way times its length over the distance to the crossing, which is exact for a steady
/// flow along the way, wherever the line lies (derived). What a cell owns beyond the line goes to the cell there
/// (<see cref="SeveredVolumes"/>).
/// </remarks>
internal sealed class InnerLineCutter
{
    private readonly CutCellGrid cells;
    private readonly ClothMap cloth;
    private readonly FivePointOperator conductances;
    private readonly Dictionary<LatticeEdge, List<LineCrossing>> cuts = [];

    /// <summary>Makes a cutter for the conductances between the cells.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    /// <param name="conductances">Conductances between the cells; changed only by <see cref="CutAll"/>.</param>
    public InnerLineCutter(CutCellGrid cells, ClothMap cloth, FivePointOperator conductances)
    {
        this.cells = cells;
        this.cloth = cloth;
        this.conductances = conductances;
    }

    /// <summary>Enters the stretches of a line that lie inside the cloth.</summary>
    /// <param name="stretches">The stretches.</param>
    /// <param name="contacts">Contacts of the line.</param>
    public void Enter(IReadOnlyList<Segment> stretches, ContactTable contacts)
    {
        foreach (Segment stretch in stretches)
        {
            foreach ((LatticeEdge edge, double share) in EdgeCrossings.Of(stretch, cells, conductances))
            {
                if (!cuts.TryGetValue(edge, out List<LineCrossing>? crossings)) cuts[edge] = crossings = [];
                crossings.Add(new(share, stretch, contacts));
            }
        }

        // Between the outermost middles and the edge of the cloth there is no other cell to part from, but the line feeds there as well.
        foreach ((int cell, double conductance) in WallWays.Crossed(stretches, cells, cloth)) contacts.AddBeyond(cell, conductance);
    }

    /// <summary>Cuts every way that was entered, joins its two ends to the lines nearest to them and hands over the volume beyond.</summary>
    /// <param name="poreVolume">Volume that resin can fill in each cell [m³].</param>
    public void CutAll(double[] poreVolume)
    {
        SeveredVolumes severed = new(cells);
        foreach ((LatticeEdge edge, List<LineCrossing> crossings) in cuts)
        {
            LineCrossing near = crossings.MinBy(crossing => crossing.Share), far = crossings.MaxBy(crossing => crossing.Share);
            int other = edge.OtherCell(cells.Grid);
            near.Contacts.AddBeyond(edge.Cell, edge.ConductanceTo(near.Share, conductances));
            far.Contacts.AddBeyond(other, edge.ConductanceTo(1 - far.Share, conductances));
            severed.Enter(edge.Cell, other, edge.IsNorth, near.Stretch);
            severed.Enter(other, edge.Cell, edge.IsNorth, far.Stretch);
        }

        severed.HandOver(poreVolume);
        foreach (LatticeEdge edge in cuts.Keys) edge.Cut(conductances);
    }
}

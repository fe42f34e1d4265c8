using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Lines;

/// <summary>Contacts of lines inside the cloth, which have no width in the flow: each way between two cells that a line crosses is cut, and its two ends are joined to the line instead.</summary>
/// <remarks>
/// Each end gets the conductance of the way times its length over the distance to the crossing, which is exact for a steady
/// flow along the way, wherever the line lies (derived). Lines that pass no resin touch the cells likewise but cut nothing.
/// </remarks>
internal sealed class InnerLineCutter
{
    // Bounds the ratio of conductances where a line runs through the middle of a cell; shifts the line by less than that part of a cell.
    private const double LeastShare = 0.005;

    private readonly CutCellGrid cells;
    private readonly ClothMap cloth;
    private readonly FivePointOperator conductances;
    private readonly Dictionary<LatticeEdge, List<(double Share, ContactTable Contacts)>> cuts = [];

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

    /// <summary>Enters a stretch that blocks the flow.</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="contacts">Contacts of its line.</param>
    public void Enter(Segment stretch, ContactTable contacts)
    {
        foreach ((LatticeEdge edge, double share) in EdgeCrossings.Of(stretch, cells, conductances))
        {
            if (!cuts.TryGetValue(edge, out List<(double Share, ContactTable Contacts)>? crossings)) cuts[edge] = crossings = [];
            crossings.Add((share, contacts));
        }

        TouchBeforeWalls(stretch, contacts);
    }

    /// <summary>Adds the contacts of a stretch that passes no resin and so blocks nothing.</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="contacts">Contacts of its line.</param>
    public void Touch(Segment stretch, ContactTable contacts)
    {
        foreach ((LatticeEdge edge, double share) in EdgeCrossings.Of(stretch, cells, conductances))
        {
            Join(edge, share, contacts);
            JoinFar(edge, share, contacts);
        }

        TouchBeforeWalls(stretch, contacts);
    }

    /// <summary>Cuts every way that was entered and joins its two ends to the lines nearest to them.</summary>
    public void CutAll()
    {
        foreach ((LatticeEdge edge, List<(double Share, ContactTable Contacts)> crossings) in cuts)
        {
            (double share, ContactTable contacts) = crossings.MinBy(crossing => crossing.Share);
            Join(edge, share, contacts);
            (share, contacts) = crossings.MaxBy(crossing => crossing.Share);
            JoinFar(edge, share, contacts);
        }

        foreach (LatticeEdge edge in cuts.Keys) Conductances(edge.IsNorth)[edge.Cell] = 0;
    }

    // Between the outermost middles and the edge of the cloth there is no other cell to part from, but the line feeds there as well.
    private void TouchBeforeWalls(Segment stretch, ContactTable contacts)
    {
        foreach (EdgePiece piece in cells.EdgePieces)
        {
            if (!(piece.Length > 0) || EdgeCrossings.BeforeWall(stretch, piece, cells) is not double share) continue;
            contacts.AddInside(piece.Cell, piece.Length / WallWays.Resistance(piece, cells, cloth) / Math.Max(share, LeastShare));
        }
    }

    private void Join(LatticeEdge edge, double share, ContactTable contacts) =>
        contacts.AddInside(edge.Cell, Conductances(edge.IsNorth)[edge.Cell] / Math.Max(share, LeastShare));

    private void JoinFar(LatticeEdge edge, double share, ContactTable contacts) =>
        contacts.AddInside(edge.Cell + (edge.IsNorth ? cells.Grid.Columns : 1), Conductances(edge.IsNorth)[edge.Cell] / Math.Max(1 - share, LeastShare));

    private double[] Conductances(bool isNorth) => isNorth ? conductances.North : conductances.East;
}

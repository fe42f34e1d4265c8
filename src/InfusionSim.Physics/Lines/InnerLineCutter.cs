using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Layers;

namespace InfusionSim.Physics.Lines;

/// <summary>
/// Contacts of lines and gaps inside the cloth that pass resin. Lines have no width in the flow, gaps have their own: each way between two cells that
/// a line crosses is cut, a slanted one too, and its two ends are joined to the line instead.
/// </summary>
/// <remarks>
/// Each end gets the conductance of the way times its length over the distance to the crossing, which is exact for a steady
/// flow along the way, wherever the line lies (derived). What a cell owns beyond the line goes to the cell there
/// (<see cref="SeveredVolumes"/>).
/// </remarks>
internal sealed class InnerLineCutter
{
    // Shares of a way that agree to so many digits are one place: rounding must not choose between them.
    private const int ShareDigits = 9;

    private readonly LayerSheet sheet;
    private readonly CutCellGrid cells;
    private readonly LatticeOperator conductances;
    private readonly Dictionary<LatticeEdge, List<LineCrossing>> cuts = [];

    /// <summary>Makes a cutter for the ways within one layer.</summary>
    /// <param name="sheet">The layer; its conductances and volumes are changed only by <see cref="CutAll"/>.</param>
    public InnerLineCutter(LayerSheet sheet)
    {
        this.sheet = sheet;
        cells = sheet.Cells;
        conductances = sheet.Conductances;
    }

    /// <summary>
    /// Enters the stretches of a line that lie inside the cloth, where they lie on this layer: at least one end of a way they cross has no layer
    /// above.
    /// </summary>
    /// <param name="stretches">The stretches.</param>
    /// <param name="contacts">Contacts of the line.</param>
    /// <param name="isFeed">Whether the line brings resin.</param>
    public void Enter(IReadOnlyList<Segment> stretches, ContactTable contacts, bool isFeed) => Enter(stretches, contacts, isFeed, onlyOnTop: true, halfWidth: 0);

    /// <summary>Enters the stretches of a gap that lie inside the cloth: it parts the layer whether anything lies on it or not.</summary>
    /// <param name="stretches">The stretches.</param>
    /// <param name="contacts">Contacts of the gap.</param>
    /// <param name="width">Its width [m].</param>
    public void EnterGap(IReadOnlyList<Segment> stretches, ContactTable contacts, double width)
    {
        GapRoom.Take(sheet, stretches, width);
        Enter(stretches, contacts, isFeed: true, onlyOnTop: false, width / 2);
    }

    private void Enter(IReadOnlyList<Segment> stretches, ContactTable contacts, bool isFeed, bool onlyOnTop, double halfWidth)
    {
        foreach (Segment stretch in stretches)
        {
            foreach ((LatticeEdge edge, double share) in EdgeCrossings.Of(stretch, cells, conductances))
            {
                if (onlyOnTop && !sheet.IsOnTop(edge.Cell) && !sheet.IsOnTop(edge.OtherCell(cells.Grid))) continue;
                if (!cuts.TryGetValue(edge, out List<LineCrossing>? crossings)) cuts[edge] = crossings = [];
                crossings.Add(new(share, stretch, contacts, isFeed, halfWidth));
            }
        }

        // Between the outermost middles and the edge of the cloth there is no other cell to part from, but the line feeds there as well.
        foreach ((int cell, double conductance) in WallWays.Crossed(stretches, cells, sheet.Cloth))
        {
            if (!onlyOnTop || sheet.IsOnTop(cell)) contacts.AddBeyond(cell, conductance);
        }

        foreach (WallExit exit in sheet.Exits)
        {
            if (onlyOnTop && !sheet.IsOnTop(exit.Cell)) continue;
            double nearest = stretches.Min(stretch => EdgeCrossings.On(stretch, exit.Way, cells)) ?? double.PositiveInfinity;
            if (nearest <= 1) contacts.AddBeyond(exit.Cell, exit.Conductance / Math.Max(nearest, LatticeEdge.LeastShare), exit.IsNextCell);
        }
    }

    /// <summary>Cuts every way that was entered, joins its two ends to the lines nearest to them and hands over the volume beyond.</summary>
    public void CutAll()
    {
        KeepSingleCellsReachable();
        SeveredVolumes severed = new(cells);
        foreach ((LatticeEdge edge, List<LineCrossing> crossings) in cuts)
        {
            LineCrossing near = NearestOf(crossings, atStart: true), far = NearestOf(crossings, atStart: false);
            int other = edge.OtherCell(cells.Grid);
            Point2 start = cells.CentroidOf(edge.Cell), end = cells.CentroidOf(other);
            near.Contacts.AddBeyond(edge.Cell, edge.ConductanceTo(near.ClothOf(near.Share, start, end), conductances), edge.IsThroughFace);
            far.Contacts.AddBeyond(other, edge.ConductanceTo(far.ClothOf(1 - far.Share, start, end), conductances), edge.IsThroughFace);
            if (!edge.IsThroughFace) continue;
            Shorten(edge.Cell, -edge.Right, -edge.Up, near.Beyond(near.Share, start, end));
            Shorten(other, edge.Right, edge.Up, far.Beyond(1 - far.Share, start, end));
            severed.Enter(edge.Cell, other, edge.IsNorth, near.Stretch);
            severed.Enter(other, edge.Cell, edge.IsNorth, far.Stretch);
        }

        severed.HandOver(sheet.PoreVolume);
        foreach (LatticeEdge edge in cuts.Keys) edge.Cut(conductances);

        // A gap that takes in the middle of a cell shortens the way to the cell behind it as well.
        void Shorten(int cell, int right, int up, double share)
        {
            int before = right + up < 0 ? cell + up * cells.Grid.Columns + right : cell;
            if (share > 0 && before >= 0) conductances.Way(Math.Abs(right), Math.Abs(up)).Conductance[before] /= 1 - share;
        }
    }

    // A cell alone between the arms of a bent vent would stay dry for no other reason than its size: the way across the farthest arm stays open,
    // behind which the vent still blocks.
    private void KeepSingleCellsReachable()
    {
        List<LatticeEdge> kept = [];
        foreach (int cell in cuts.Keys.SelectMany(edge => new[] { edge.Cell, edge.OtherCell(cells.Grid) }).Distinct())
        {
            LatticeEdge[] ways = [.. WaysOf(cell)];
            if (!ways.All(cuts.ContainsKey) || ways.Any(way => Nearest(way, cell).IsFeed)) continue;
            kept.Add(ways.OrderBy(way => WaysOf(OtherEnd(way, cell)).All(cuts.ContainsKey))
                .ThenByDescending(way => Math.Round(DistanceShare(way, cell), ShareDigits))
                .ThenBy(way => DirectionFrom(way, cell))
                .First());
        }

        foreach (LatticeEdge way in kept) cuts.Remove(way);
    }

    private IEnumerable<LatticeEdge> WaysOf(int cell)
    {
        UniformGrid grid = cells.Grid;
        foreach (StencilWay way in conductances.Ways)
        {
            if (way.Conductance[cell] > 0) yield return new(cell, way.Right, way.Up);
            int column = grid.ColumnOf(cell) - way.Right, row = grid.RowOf(cell) - way.Up;
            if (column < 0 || column >= grid.Columns || row < 0) continue;
            int before = grid.IndexOf(column, row);
            if (way.Conductance[before] > 0) yield return new(before, way.Right, way.Up);
        }
    }

    private int OtherEnd(LatticeEdge way, int cell) => way.Cell == cell ? way.OtherCell(cells.Grid) : way.Cell;

    // Of ways that a line cuts equally far off, the first one is the same when x and y are exchanged.
    private (int Long, int Short) DirectionFrom(LatticeEdge way, int cell)
    {
        (int right, int up) = way.Cell == cell ? (way.Right, way.Up) : (-way.Right, -way.Up);
        return cells.IsWide ? (right, up) : (up, right);
    }

    private LineCrossing Nearest(LatticeEdge way, int cell) => NearestOf(cuts[way], atStart: way.Cell == cell);

    // Of lines that cross a way at one place, the one entered first.
    private static LineCrossing NearestOf(List<LineCrossing> crossings, bool atStart) =>
        crossings.MinBy(crossing => Math.Round(atStart ? crossing.Share : 1 - crossing.Share, ShareDigits));

    private double DistanceShare(LatticeEdge way, int cell)
    {
        double share = Nearest(way, cell).Share;
        return way.Cell == cell ? share : 1 - share;
    }
}

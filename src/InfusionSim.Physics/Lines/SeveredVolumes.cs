using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Physics.Lines;

/// <summary>Hands the volume a cell owns on the far side of a line to the cell that lies there.</summary>
/// <remarks>
/// Without this a cell could fill only through a line it does not reach behind, and the clock at a vent inside the cloth would
/// be wrong by up to a cell; with it the error falls as the square of the cell (derived in 1D). Where a slanted line parts a cell
/// from two neighbours, each gets the share of its direction in the square of the line's normal.
/// </remarks>
internal sealed class SeveredVolumes
{
    // A cell between several lines keeps something to fill.
    private const double LeastLeft = 0.01;

    // Nearer to a middle than this share of a cell a line runs through it, and within this angle [rad] of a way along it: rounding must not tell the side.
    private const double Aligned = 1e-6;

    private readonly CutCellGrid cells;
    private readonly ILookup<int, CellPart> partsOf;
    private readonly List<(int Cell, int Receiver, bool IsNorth, Segment Stretch)> ends = [];
    private readonly HashSet<(int Cell, int Receiver)> parted = [];

    /// <summary>Makes an empty list of parted cells.</summary>
    /// <param name="cells">The cells.</param>
    public SeveredVolumes(CutCellGrid cells)
    {
        this.cells = cells;
        partsOf = cells.CutParts.ToLookup(part => part.Owner);
    }

    /// <summary>Enters that a stretch parts a cell from its neighbour.</summary>
    public void Enter(int cell, int receiver, bool isNorth, Segment stretch)
    {
        ends.Add((cell, receiver, isNorth, stretch));
        parted.Add((cell, receiver));
    }

    /// <summary>Moves the volumes.</summary>
    /// <param name="poreVolume">Volume that resin can fill in each cell [m³].</param>
    public void HandOver(double[] poreVolume)
    {
        List<(int Cell, int Receiver, double Share)> moves = [];
        Dictionary<int, double> shareGiven = [];
        foreach ((int cell, int receiver, bool isNorth, Segment stretch) in ends)
        {
            // Points from the cell's middle to the line.
            double length = stretch.Length;
            if (length == 0) continue;
            double nx = (stretch.To.Y - stretch.From.Y) / length, ny = -(stretch.To.X - stretch.From.X) / length;
            double offset = nx * (stretch.From.X - cells.CentroidX[cell]) + ny * (stretch.From.Y - cells.CentroidY[cell]);
            // Where the line runs through the middle itself, only the receiver tells the side.
            if (Math.Abs(offset) < Aligned * cells.Grid.CellSize) offset = nx * (cells.CentroidX[receiver] - cells.CentroidX[cell]) + ny * (cells.CentroidY[receiver] - cells.CentroidY[cell]);
            if (offset < 0) (nx, ny) = (-nx, -ny);
            double own = isNorth ? ny * ny : nx * nx;

            // A line that runs from one middle to the next has nothing on a far side.
            if (own < Aligned * Aligned) continue;
            double side = parted.Contains((cell, Neighbour(cell, isNorth ? nx : ny, !isNorth))) ? 1 - own : 0;
            double share = ShareBeyond(cell, nx, ny, stretch.From) * own / (own + side);
            moves.Add((cell, receiver, share));
            shareGiven[cell] = shareGiven.GetValueOrDefault(cell) + share;
        }

        // What several lines would take from a cell beyond what it can give they share.
        double[] before = (double[])poreVolume.Clone();
        foreach ((int cell, int receiver, double share) in moves)
        {
            double moved = before[cell] * share * Math.Min(1, (1 - LeastLeft) / shareGiven[cell]);
            poreVolume[cell] -= moved;
            poreVolume[receiver] += moved;
        }
    }

    private int Neighbour(int cell, double direction, bool isNorth) => cell + Math.Sign(direction) * (isNorth ? cells.Grid.Columns : 1);

    private double ShareBeyond(int cell, double nx, double ny, Point2 onLine)
    {
        double beyond = 0, all = 0;
        foreach (Ring ring in BordersOf(cell))
        {
            all += Math.Abs(ring.SignedArea);
            beyond += AreaBeyond(ring, nx, ny, onLine);
        }

        return beyond / all;
    }

    private IEnumerable<Ring> BordersOf(int cell)
    {
        UniformGrid grid = cells.Grid;
        double h = grid.CellSize, x = grid.Origin.X + grid.ColumnOf(cell) * h, y = grid.Origin.Y + grid.RowOf(cell) * h;
        IEnumerable<Ring> cut = partsOf[cell].Select(part => part.Border);
        bool isWhole = !partsOf[cell].Any(part => part.Square == cell);
        return isWhole ? cut.Prepend(new Ring([new(x, y), new(x + h, y), new(x + h, y + h), new(x, y + h)])) : cut;
    }

    private static double AreaBeyond(Ring ring, double nx, double ny, Point2 onLine)
    {
        var kept = new List<Point2>();
        Point2 a = ring.Corners[^1];
        double sideA = Side(a);
        foreach (Point2 b in ring.Corners)
        {
            double sideB = Side(b);
            if ((sideA > 0) != (sideB > 0))
            {
                double share = sideA / (sideA - sideB);
                kept.Add(new(a.X + share * (b.X - a.X), a.Y + share * (b.Y - a.Y)));
            }

            if (sideB > 0) kept.Add(b);
            (a, sideA) = (b, sideB);
        }

        return kept.Count < 3 ? 0 : Math.Abs(new Ring(kept).SignedArea);

        double Side(Point2 place) => nx * (place.X - onLine.X) + ny * (place.Y - onLine.Y);
    }
}

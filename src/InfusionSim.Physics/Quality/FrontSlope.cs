using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Quality;

/// <summary>How much later on the drive clock the front comes, per length of its way: one over this is how far it goes per unit of clock.</summary>
/// <remarks>
/// Along each axis the parabola that fits best (least squares) to the arrival in the cells on both sides that are open to each other, a few of them,
/// so that what is not known of single
/// arrivals evens out; exact in a straight fill, whose arrival is a parabola, at an edge and beside a line too. Where two fronts meet the arrival turns
/// round and the cell fills from both; the stretch ends before it, and at that cell itself the steeper side counts alone. A cell that an edge cuts
/// ends a stretch and counts at the
/// middle of its cloth: round a cut-out the front turns most right beside it, where whole cells alone say too little. Of slivers, which are
/// passed at odd moments, nothing is read; they have the mean slope of the cells beside them. Through the thickness the cells next to it count, in the same
/// laminate. So close to a feed that the front was there before the first state was computed no slope is told.
/// </remarks>
internal sealed class FrontSlope
{
    /// <summary>Share of the fill within which the arrival at one cell is known [-]; less is no turn.</summary>
    public const double Known = 1e-3;

    /// <summary>Share of the fill before which arrivals are not told apart [-].</summary>
    public const double Soonest = 1.0 / 2304;

    private const double Uncut = 1e-3;

    // Share of a square below which a cut cell is a sliver (our own choice).
    private const double Sliver = 0.3;

    // A fiftieth of the panel on either side, within bounds: what a picture of it can show.
    private const int Fewest = 1, Most = 8;
    private const double PanelShare = 0.02;

    // Slope along one axis, then along the other with the first one known, settled after a few rounds.
    private const int Rounds = 4;

    private readonly CutCellGrid cells;
    private readonly double[] arrival, east, north;
    private readonly int columns, step, reach;
    private readonly double noise, soonest;
    private readonly ThicknessWays ways;
    private readonly AxisStretch alongX, alongY;

    /// <summary>Makes the slopes of a fill.</summary>
    /// <param name="map">Where the resin goes.</param>
    public FrontSlope(FillMap map)
    {
        cells = map.Problem.Cells;
        arrival = map.Arrival;
        (east, north) = (map.Problem.Operator.East, map.Problem.Operator.North);
        (columns, step) = (cells.Grid.Columns, map.Problem.Operator.CellsInLayer);
        reach = Math.Clamp((int)Math.Round(PanelShare * Math.Max(cells.Grid.Columns, cells.Grid.Rows)), Fewest, Most);
        (noise, soonest) = (Known * map.FillClock, Soonest * map.FillClock);
        ways = new ThicknessWays(map.Problem);
        (alongX, alongY) = (new(reach), new(reach));
    }

    /// <summary>Slope of the arrival at the middle of each cell of the lowest layer of laminate [1/m]; NaN where there is none. [rows × columns], x fastest.</summary>
    /// <param name="map">Where the resin goes.</param>
    public static double[] OnToolSide(FillMap map)
    {
        FrontSlope slope = new(map);
        return [.. map.Problem.ToolSide.Select(node => node < 0 ? double.NaN : slope.At(node))];
    }

    /// <summary>
    /// Slope of the arrival at the middle of a node [1/m]; NaN where the front never comes, beside a feed, and where nothing tells where it came
    /// from.
    /// </summary>
    /// <param name="node">A node of a layer.</param>
    public double At(int node)
    {
        if (!Counts(node) || arrival[node] < soonest) return double.NaN;
        if (IsRead(node)) return Fitted(node);
        (int right, int left, int up, int down) = (East(node), West(node), North(node), South(node));
        double? beside = MeanOf(right, left, up, down);
        beside ??= MeanOf(Beyond(right, North), Beyond(left, North), Beyond(right, South), Beyond(left, South), Beyond(up, East), Beyond(up, West), Beyond(down, East), Beyond(down, West));
        return beside ?? Fitted(node);
    }

    private static int Beyond(int node, Func<int, int> next) => node < 0 ? -1 : next(node);

    private double? MeanOf(params ReadOnlySpan<int> nodes)
    {
        double sum = 0;
        int found = 0;
        foreach (int node in nodes)
        {
            if (node < 0 || !IsRead(node) || arrival[node] < soonest) continue;
            double slope = Fitted(node);
            if (double.IsNaN(slope)) continue;
            sum += slope;
            found++;
        }

        return found > 0 ? sum / found : null;
    }

    private double Fitted(int node)
    {
        Walk(alongX, node, East, West);
        Walk(alongY, node, North, South);
        double slopeX = 0, slopeY = 0;
        for (int round = 0; round < Rounds; round++)
        {
            slopeX = alongX.Slope(arrival, cells.CentroidX, cells.CentroidY, step, slopeY);
            slopeY = alongY.Slope(arrival, cells.CentroidY, cells.CentroidX, step, slopeX);
        }

        double slopeZ = ThroughThickness(node);
        double slope = Math.Sqrt(slopeX * slopeX + slopeY * slopeY + slopeZ * slopeZ);
        return slope > 0 ? slope : double.NaN;
    }

    private void Walk(AxisStretch stretch, int node, Func<int, int> after, Func<int, int> before)
    {
        stretch.Begin(node);
        int up = Extend(stretch, node, after, amongRead: true), down = Extend(stretch, node, before, amongRead: true);
        if (up + down == 0) (up, down) = (Extend(stretch, node, after, amongRead: false), Extend(stretch, node, before, amongRead: false));
        if (up > 0 && down > 0) stretch.KeepSteeperOfTwoThatFall(arrival, up, noise);
    }

    private int Extend(AxisStretch stretch, int node, Func<int, int> next, bool amongRead)
    {
        int count = 0;
        for (int at = next(node), beyond; at >= 0 && count < reach; at = beyond, count++)
        {
            if (amongRead && !IsRead(at)) break;
            beyond = amongRead && !IsWhole(at) ? -1 : next(at);

            // Where the arrival turns round two fronts meet: that cell fills from both, and beyond it lies the other one.
            if (arrival[at] > arrival[node] && beyond >= 0 && arrival[beyond] < arrival[at] - noise) break;
            stretch.Add(at);
        }

        return count;
    }

    private double ThroughThickness(int node)
    {
        (int above, double up) = ways.Above(node);
        (int below, double down) = ways.Below(node);
        bool hasAbove = above >= 0 && Counts(above), hasBelow = below >= 0 && Counts(below);
        double rise = hasAbove ? (arrival[above] - arrival[node]) / up : 0, fall = hasBelow ? (arrival[below] - arrival[node]) / down : 0;
        if (!hasAbove || !hasBelow) return rise - fall;
        return rise < 0 && fall < 0 ? Math.Min(rise, fall) : (rise * up - fall * down) / (up + down);
    }

    private bool IsWhole(int node) => ShareOf(node) > 1 - Uncut;

    private bool IsRead(int node) => ShareOf(node) > Sliver;

    private double ShareOf(int node) => cells.Area[node % step] / (cells.Grid.CellSize * cells.Grid.CellSize);

    private bool Counts(int node) => arrival[node] < double.PositiveInfinity;

    private int East(int node) => east[node] > 0 && Counts(node + 1) ? node + 1 : -1;

    private int West(int node) => node % columns > 0 && east[node - 1] > 0 && Counts(node - 1) ? node - 1 : -1;

    private int North(int node) => north[node] > 0 && Counts(node + columns) ? node + columns : -1;

    private int South(int node) => node % step >= columns && north[node - columns] > 0 && Counts(node - columns) ? node - columns : -1;
}

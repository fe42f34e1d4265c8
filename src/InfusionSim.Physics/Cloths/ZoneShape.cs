using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Cloths;

/// <summary>The ring of a zone with the boxes round it and its edges, which spare most places and ways the look at its corners.</summary>
internal sealed class ZoneShape
{
    // Sides of a way are found by differences whose rounding may call an edge crossed that the boxes keep apart by less than this share of the coordinates.
    private const double Margin = 1e-9;

    // A crossing no farther than this share of an edge from its end lies in the corner.
    private const double AtCorner = 1e-9;

    // A corner no farther from a way than this share of its length lies on it. The way is then cut there, whether it goes in, goes out or runs on
    // along the edge: one cut
    // too many does no harm, and which of them rounding finds must not matter.
    private const double OnWay = 1e-9;

    private readonly RingLocator locator;
    private readonly Box all;
    private readonly (Point2 Start, Point2 End, Box Box)[] edges;

    /// <summary>Indexes a ring.</summary>
    /// <param name="ring">The ring, without crossings; either way round.</param>
    public ZoneShape(Ring ring)
    {
        locator = new(ring);
        edges = new (Point2, Point2, Box)[ring.Corners.Count];
        Point2 a = ring.Corners[^1];
        all = Box.Round(a, a);
        for (int k = 0; k < edges.Length; k++)
        {
            Point2 b = ring.Corners[k];
            edges[k] = (a, b, Box.Round(a, b));
            all = all.With(edges[k].Box);
            a = b;
        }
    }

    /// <summary>Whether a place lies inside the ring or on its edge.</summary>
    /// <param name="place">The place [m].</param>
    public bool Contains(Point2 place) => all.Meets(new(place.X, place.Y, place.X, place.Y)) && locator.Contains(place);

    /// <summary>Adds the places of a straight way at which it crosses the ring.</summary>
    /// <param name="crossings">Where to add them.</param>
    /// <param name="from">Where the way begins [m].</param>
    /// <param name="to">Where it ends [m].</param>
    public void AddCrossings(List<ZoneCrossing> crossings, Point2 from, Point2 to)
    {
        Box way = Box.Round(from, to);
        if (!all.Meets(way)) return;
        for (int k = 0; k < edges.Length; k++)
        {
            (Point2 start, Point2 end, Box box) = edges[k];
            if (!box.Meets(way)) continue;
            double sideA = Side(from, to, start), sideB = Side(from, to, end);
            bool meetsStart = Math.Abs(sideA) <= OnWay, meetsEnd = Math.Abs(sideB) <= OnWay;
            if (meetsStart) Add(k, 0);
            if (meetsEnd) Add(k, 1);
            if (!meetsStart && !meetsEnd && (sideA > 0) != (sideB > 0)) Add(k, sideA / (sideA - sideB));
        }

        void Add(int edge, double onEdge)
        {
            (Point2 start, Point2 end, _) = edges[edge];
            double share = ShareNearest(from, to, new(start.X + onEdge * (end.X - start.X), start.Y + onEdge * (end.Y - start.Y)));
            Point2 across = Across(edge, onEdge);
            if (share is > 0 and < 1) crossings.Add(new(share, across.X, across.Y));
        }
    }

    // Unit vector out of the ring or into it; in a corner the mean of the two edges that meet there, whichever of them the way is found to cross.
    private Point2 Across(int edge, double onEdge)
    {
        Point2 own = Across(edges[edge].Start, edges[edge].End);
        if (onEdge > AtCorner && onEdge < 1 - AtCorner) return own;
        (Point2 start, Point2 end, _) = edges[(edge + (onEdge <= AtCorner ? edges.Length - 1 : 1)) % edges.Length];
        Point2 other = Across(start, end);
        double x = own.X + other.X, y = own.Y + other.Y, size = Math.Sqrt(x * x + y * y);
        return size > AtCorner ? new(x / size, y / size) : own;
    }

    private static Point2 Across(Point2 start, Point2 end)
    {
        double length = start.DistanceTo(end);
        return length > 0 ? new((end.Y - start.Y) / length, (start.X - end.X) / length) : default;
    }

    // How far a place lies to the left of a way, as a share of its length.
    private static double Side(Point2 from, Point2 to, Point2 place)
    {
        double x = to.X - from.X, y = to.Y - from.Y;
        return (x * (place.Y - from.Y) - y * (place.X - from.X)) / (x * x + y * y);
    }

    private static double ShareNearest(Point2 from, Point2 to, Point2 place)
    {
        double x = to.X - from.X, y = to.Y - from.Y;
        return ((place.X - from.X) * x + (place.Y - from.Y) * y) / (x * x + y * y);
    }

    private readonly record struct Box(double Left, double Bottom, double Right, double Top)
    {
        public static Box Round(Point2 a, Point2 b)
        {
            double margin = Margin * (1 + Math.Max(Math.Max(Math.Abs(a.X), Math.Abs(a.Y)), Math.Max(Math.Abs(b.X), Math.Abs(b.Y))));
            return new(Math.Min(a.X, b.X) - margin, Math.Min(a.Y, b.Y) - margin, Math.Max(a.X, b.X) + margin, Math.Max(a.Y, b.Y) + margin);
        }

        public Box With(Box other) => new(Math.Min(Left, other.Left), Math.Min(Bottom, other.Bottom), Math.Max(Right, other.Right), Math.Max(Top, other.Top));

        public bool Meets(Box other) => Left <= other.Right && other.Left <= Right && Bottom <= other.Top && other.Bottom <= Top;
    }
}

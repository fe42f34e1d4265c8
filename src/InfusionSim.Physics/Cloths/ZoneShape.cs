using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Cloths;

/// <summary>The ring of a zone with the boxes round it and its edges, which spare most places and ways the look at its corners.</summary>
internal sealed class ZoneShape
{
    // Sides of a way are found by differences whose rounding may call an edge crossed that the boxes keep apart by less than this share of the coordinates.
    private const double Margin = 1e-9;

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
        foreach ((Point2 start, Point2 end, Box box) in edges)
        {
            if (box.Meets(way) && Crossing(from, to, start, end) is double share) crossings.Add(new(share, end.Y - start.Y, start.X - end.X));
        }
    }

    private static double? Crossing(Point2 from, Point2 to, Point2 a, Point2 b)
    {
        double dx = to.X - from.X, dy = to.Y - from.Y;
        double sideA = dx * (a.Y - from.Y) - dy * (a.X - from.X), sideB = dx * (b.Y - from.Y) - dy * (b.X - from.X);
        if ((sideA > 0) == (sideB > 0)) return null;
        double onEdge = sideA / (sideA - sideB), x = a.X + onEdge * (b.X - a.X), y = a.Y + onEdge * (b.Y - a.Y);
        double share = ((x - from.X) * dx + (y - from.Y) * dy) / (dx * dx + dy * dy);
        return share > 0 && share < 1 ? share : null;
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

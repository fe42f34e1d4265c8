using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace InfusionSim.Numerics.Geometry;

/// <summary>Answers what lies inside a ring; built once per ring, safe to ask from many threads.</summary>
public sealed class RingLocator
{
    private readonly IndexedPointInAreaLocator locator;
    private readonly STRtree<(Point2 Start, Point2 End)> edges = new();

    /// <summary>Indexes a ring.</summary>
    /// <param name="ring">The ring, without crossings; either way round.</param>
    public RingLocator(Ring ring)
    {
        ArgumentNullException.ThrowIfNull(ring);
        locator = new IndexedPointInAreaLocator(RegionShapes.ToPolygon(ring, []));
        for (int k = 0; k < ring.Corners.Count; k++)
        {
            Point2 start = ring.Corners[k], end = ring.Corners[(k + 1) % ring.Corners.Count];
            edges.Insert(new Envelope(start.X, end.X, start.Y, end.Y), (start, end));
        }

        // The library builds its indexes at the first question; asking here keeps later questions free of writes.
        edges.Build();
        Contains(ring.Corners[0]);
    }

    /// <summary>Whether a place lies inside the ring or on its edge.</summary>
    /// <param name="place">The place [m].</param>
    public bool Contains(Point2 place) => locator.Locate(new Coordinate(place.X, place.Y)) != Location.Exterior;

    /// <summary>The stretches of a straight segment that lie inside the ring, in order and apart from each other.</summary>
    /// <param name="from">Start of the segment [m].</param>
    /// <param name="to">End of the segment [m].</param>
    public IReadOnlyList<ParameterInterval> IntervalsInside(Point2 from, Point2 to)
    {
        List<double> stops = [0, 1];
        foreach ((Point2 start, Point2 end) in edges.Query(new Envelope(from.X, to.X, from.Y, to.Y))) AddStops(stops, from, to, start, end);
        stops.Sort();
        var inside = new List<ParameterInterval>();
        for (int k = 0; k + 1 < stops.Count; k++)
        {
            if (stops[k + 1] <= stops[k]) continue;
            double middle = (stops[k] + stops[k + 1]) / 2;
            if (!Contains(new Point2(from.X + middle * (to.X - from.X), from.Y + middle * (to.Y - from.Y)))) continue;
            if (inside.Count > 0 && inside[^1].To == stops[k]) inside[^1] = inside[^1] with { To = stops[k + 1] };
            else inside.Add(new ParameterInterval(stops[k], stops[k + 1]));
        }

        return inside;
    }

    /// <summary>Share of a straight segment that lies inside the ring [-], 0 to 1; for a segment without length whether its place does.</summary>
    /// <param name="from">Start of the segment [m].</param>
    /// <param name="to">End of the segment [m].</param>
    public double ShareInside(Point2 from, Point2 to) => IntervalsInside(from, to).Sum(i => i.Share);

    private static void AddStops(List<double> stops, Point2 from, Point2 to, Point2 start, Point2 end)
    {
        double runX = to.X - from.X, runY = to.Y - from.Y, edgeX = end.X - start.X, edgeY = end.Y - start.Y;
        double cross = runX * edgeY - runY * edgeX;
        if (cross != 0)
        {
            double along = ((start.X - from.X) * edgeY - (start.Y - from.Y) * edgeX) / cross;
            double alongEdge = ((start.X - from.X) * runY - (start.Y - from.Y) * runX) / cross;
            // A crossing just off the edge's end belongs to the next edge as well: one stop too many does no harm, a missing one does.
            if (along > 0 && along < 1 && alongEdge > -1e-9 && alongEdge < 1 + 1e-9) stops.Add(along);
            return;
        }

        double square = runX * runX + runY * runY;
        if (square == 0) return;
        foreach (Point2 corner in (ReadOnlySpan<Point2>)[start, end])
        {
            double along = ((corner.X - from.X) * runX + (corner.Y - from.Y) * runY) / square;
            if (along > 0 && along < 1) stops.Add(along);
        }
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.Units;

namespace InfusionSim.Protocol.Plans;

/// <summary>Finds where a line runs over itself along a length, not only across itself.</summary>
internal static class PathOverlap
{
    /// <summary>A place where the line lies on itself [m], or null when it does not.</summary>
    public static Point2? Find(LinePath path)
    {
        (Point2 From, Point2 To)[] segments = [.. Enumerable.Range(1, path.Points.Count - 1).Select(k => (path.Points[k - 1], path.Points[k]))];
        if (segments.Length < 2) return null;
        // In order of their lower ends along the longer side, a segment need only be held against those that begin before it ends.
        bool alongX = Spread(path, point => point.X) >= Spread(path, point => point.Y);
        Array.Sort(segments, (a, b) => Low(a, alongX).CompareTo(Low(b, alongX)));
        for (int k = 0; k < segments.Length; k++)
        {
            double high = High(segments[k], alongX);
            for (int other = k + 1; other < segments.Length && Low(segments[other], alongX) <= high; other++)
                if (Shared(segments[k], segments[other]) is Point2 place) return place;
        }

        return null;
    }

    // The middle of the stretch that two segments share, if they lie on one straight line.
    private static Point2? Shared((Point2 From, Point2 To) first, (Point2 From, Point2 To) second)
    {
        double touching = UnitConversion.MetresFromMm(PlanLimits.TouchingMm);
        if (first.From.DistanceTo(first.To) < second.From.DistanceTo(second.To)) (first, second) = (second, first);
        double length = first.From.DistanceTo(first.To);
        if (length <= touching) return null;
        double x = (first.To.X - first.From.X) / length, y = (first.To.Y - first.From.Y) / length;
        if (Math.Abs(Across(second.From)) > touching || Math.Abs(Across(second.To)) > touching) return null;
        double from = Math.Max(0, Math.Min(Along(second.From), Along(second.To))), to = Math.Min(length, Math.Max(Along(second.From), Along(second.To)));
        if (to - from <= touching) return null;
        double middle = (from + to) / 2;
        return new Point2(first.From.X + middle * x, first.From.Y + middle * y);

        double Along(Point2 place) => (place.X - first.From.X) * x + (place.Y - first.From.Y) * y;
        double Across(Point2 place) => (place.Y - first.From.Y) * x - (place.X - first.From.X) * y;
    }

    private static double Spread(LinePath path, Func<Point2, double> side) => path.Points.Max(side) - path.Points.Min(side);

    private static double Low((Point2 From, Point2 To) segment, bool alongX) =>
        alongX ? Math.Min(segment.From.X, segment.To.X) : Math.Min(segment.From.Y, segment.To.Y);

    private static double High((Point2 From, Point2 To) segment, bool alongX) =>
        alongX ? Math.Max(segment.From.X, segment.To.X) : Math.Max(segment.From.Y, segment.To.Y);
}

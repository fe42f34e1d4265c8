using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Protocol.Plans;

/// <summary>How near two lines come to each other.</summary>
internal static class PathDistance
{
    /// <summary>The least distance [m] and the place on the first line [m]; 0 where they cross.</summary>
    public static (double Distance, Point2 Place) Between(LinePath first, LinePath second)
    {
        double least = double.PositiveInfinity;
        Point2 place = first.Points[0];
        foreach ((Point2 a, Point2 b) in Segments(first))
        {
            foreach ((Point2 c, Point2 d) in Segments(second))
            {
                // Rectangles further apart than the least distance so far cannot hold a nearer pair.
                if (Gap(a.X, b.X, c.X, d.X) >= least || Gap(a.Y, b.Y, c.Y, d.Y) >= least) continue;
                (double distance, Point2 at) = Between(a, b, c, d);
                if (distance < least) (least, place) = (distance, at);
                if (least == 0) return (0, place);
            }
        }

        return (least, place);
    }

    /// <summary>The place of a segment nearest to a point [m].</summary>
    public static Point2 NearestOn(Point2 a, Point2 b, Point2 point)
    {
        double x = b.X - a.X, y = b.Y - a.Y, square = x * x + y * y;
        double along = square == 0 ? 0 : Math.Clamp(((point.X - a.X) * x + (point.Y - a.Y) * y) / square, 0, 1);
        return new Point2(a.X + along * x, a.Y + along * y);
    }

    private static IEnumerable<(Point2 Start, Point2 End)> Segments(LinePath path)
    {
        if (path.IsFitting) yield return (path.Points[0], path.Points[0]);
        for (int k = 1; k < path.Points.Count; k++) yield return (path.Points[k - 1], path.Points[k]);
    }

    private static double Gap(double a, double b, double c, double d) => Math.Max(Math.Min(c, d) - Math.Max(a, b), Math.Min(a, b) - Math.Max(c, d));

    private static (double Distance, Point2 Place) Between(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        double cross = (b.X - a.X) * (d.Y - c.Y) - (b.Y - a.Y) * (d.X - c.X);
        if (cross != 0)
        {
            double s = ((c.X - a.X) * (d.Y - c.Y) - (c.Y - a.Y) * (d.X - c.X)) / cross, t = ((c.X - a.X) * (b.Y - a.Y) - (c.Y - a.Y) * (b.X - a.X)) / cross;
            if (s is >= 0 and <= 1 && t is >= 0 and <= 1) return (0, new Point2(a.X + s * (b.X - a.X), a.Y + s * (b.Y - a.Y)));
        }

        Point2 onFirstC = NearestOn(a, b, c), onFirstD = NearestOn(a, b, d);
        Span<(double Distance, Point2 Place)> ends =
        [
            (onFirstC.DistanceTo(c), onFirstC),
            (onFirstD.DistanceTo(d), onFirstD),
            (a.DistanceTo(NearestOn(c, d, a)), a),
            (b.DistanceTo(NearestOn(c, d, b)), b),
        ];
        (double Distance, Point2 Place) least = ends[0];
        foreach ((double Distance, Point2 Place) end in ends)
            if (end.Distance < least.Distance) least = end;
        return least;
    }
}

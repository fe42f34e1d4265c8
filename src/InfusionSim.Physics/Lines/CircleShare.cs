using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Lattice;

namespace InfusionSim.Physics.Lines;

/// <summary>Share of a circle that lies in the cloth: 1 inside, ½ on a straight edge, ¼ in a right corner.</summary>
internal static class CircleShare
{
    /// <summary>Share of the circumference inside a region [-], 0 to 1, measured in the stretched plane.</summary>
    /// <param name="region">The region.</param>
    /// <param name="middle">Middle of the circle [m].</param>
    /// <param name="radius">Radius in the stretched plane [m].</param>
    /// <param name="stretch">The stretch.</param>
    public static double Inside(Region region, Point2 middle, double radius, LatticeStretch stretch)
    {
        List<Ring> rings = [.. region.Cutouts.Prepend(region.Outline).Select(Stretched)];
        List<double> angles = [.. rings.SelectMany(ring => Crossings(ring, radius)).Order()];
        if (angles.Count == 0) return IsInside(rings, new(radius, 0)) ? 1 : 0;
        double sum = 0;
        for (int k = 0; k < angles.Count; k++)
        {
            double from = angles[k], to = k + 1 < angles.Count ? angles[k + 1] : angles[0] + 2 * Math.PI;
            double middleAngle = (from + to) / 2;
            if (to - from > 1e-12 && IsInside(rings, new(radius * Math.Cos(middleAngle), radius * Math.Sin(middleAngle)))) sum += to - from;
        }

        return sum / (2 * Math.PI);

        Ring Stretched(Ring ring) => new([.. ring.Corners.Select(c => Stretch(c.X - middle.X, c.Y - middle.Y))]);

        Point2 Stretch(double x, double y) => new(x * stretch.AlongX + y * stretch.Cross, y * stretch.AlongY + x * stretch.Cross);
    }

    private static List<double> Crossings(Ring ring, double radius)
    {
        List<double> angles = [];
        Point2 a = ring.Corners[^1];
        foreach (Point2 b in ring.Corners)
        {
            double dx = b.X - a.X, dy = b.Y - a.Y, square = dx * dx + dy * dy;
            if (square > 0)
            {
                double nearest = -(a.X * dx + a.Y * dy) / square, across = a.X * dy - a.Y * dx;
                double half = Math.Sqrt(Math.Max(0, radius * radius / square - across * across / (square * square)));
                foreach (double share in (ReadOnlySpan<double>)[nearest - half, nearest + half])
                {
                    if (half > 0 && share >= 0 && share <= 1) angles.Add(Math.Atan2(a.Y + share * dy, a.X + share * dx));
                }
            }

            a = b;
        }

        return angles;
    }

    private static bool IsInside(List<Ring> rings, Point2 place)
    {
        bool inside = false;
        foreach (Ring ring in rings)
        {
            Point2 a = ring.Corners[^1];
            foreach (Point2 b in ring.Corners)
            {
                if ((a.Y > place.Y) != (b.Y > place.Y) && place.X < a.X + (place.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)) inside = !inside;
                a = b;
            }
        }

        return inside;
    }
}

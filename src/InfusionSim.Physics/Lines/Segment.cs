using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Lines;

/// <summary>A straight stretch of a line.</summary>
/// <param name="From">Where it begins [m].</param>
/// <param name="To">Where it ends [m].</param>
internal readonly record struct Segment(Point2 From, Point2 To)
{
    public double Length => From.DistanceTo(To);

    public Point2 At(double share) => new(From.X + share * (To.X - From.X), From.Y + share * (To.Y - From.Y));

    /// <summary>Share of the stretch at which it comes nearest to a place [-], 0 to 1.</summary>
    /// <param name="place">The place [m].</param>
    public double ShareNearest(Point2 place)
    {
        double x = To.X - From.X, y = To.Y - From.Y, square = x * x + y * y;
        return square == 0 ? 0 : Math.Clamp(((place.X - From.X) * x + (place.Y - From.Y) * y) / square, 0, 1);
    }

    /// <summary>Shares of this stretch and of another at which the two come nearest to each other [-].</summary>
    /// <param name="other">The other stretch.</param>
    public (double Own, double Other) SharesNearest(Segment other)
    {
        double ux = To.X - From.X, uy = To.Y - From.Y, vx = other.To.X - other.From.X, vy = other.To.Y - other.From.Y;
        double across = ux * vy - uy * vx, dx = other.From.X - From.X, dy = other.From.Y - From.Y;
        double crossing = (dx * vy - dy * vx) / across, otherCrossing = (dx * uy - dy * ux) / across;
        if (crossing is >= 0 and <= 1 && otherCrossing is >= 0 and <= 1) return (crossing, otherCrossing);

        // Stretches that do not cross come nearest at an end of one of them.
        (double Own, double Other)[] ends =
            [(0, other.ShareNearest(From)), (1, other.ShareNearest(To)), (ShareNearest(other.From), 0), (ShareNearest(other.To), 1)];
        Segment own = this;
        return ends.MinBy(pair => own.At(pair.Own).DistanceTo(other.At(pair.Other)));
    }

    /// <summary>The straight stretches between the corners of a line, those without length left out.</summary>
    /// <param name="points">Corners of the line [m].</param>
    public static IEnumerable<Segment> Between(IReadOnlyList<Point2> points)
    {
        for (int k = 1; k < points.Count; k++)
        {
            Segment segment = new(points[k - 1], points[k]);
            if (segment.Length > 0) yield return segment;
        }
    }
}

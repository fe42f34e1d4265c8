using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Lines;

/// <summary>A straight stretch of a line.</summary>
/// <param name="From">Where it begins [m].</param>
/// <param name="To">Where it ends [m].</param>
internal readonly record struct Segment(Point2 From, Point2 To)
{
    public double Length => From.DistanceTo(To);

    public Point2 At(double share) => new(From.X + share * (To.X - From.X), From.Y + share * (To.Y - From.Y));

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

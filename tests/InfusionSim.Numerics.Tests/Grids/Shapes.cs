using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Tests.Grids;

/// <summary>Regions drawn by formula, for the tests of this folder.</summary>
internal static class Shapes
{
    /// <summary>A ring through places given as x, y, x, y … [m].</summary>
    public static Ring Ring(params double[] numbers) =>
        new([.. Enumerable.Range(0, numbers.Length / 2).Select(k => new Point2(numbers[2 * k], numbers[2 * k + 1]))]);

    /// <summary>A region without cut-outs through places given as x, y, x, y … [m].</summary>
    public static Region Plain(params double[] numbers) => new(Ring(numbers), []);

    /// <summary>A regular polygon.</summary>
    public static Ring Polygon(Point2 middle, double radius, int corners, double firstAngle = 0) =>
        new([.. Enumerable.Range(0, corners).Select(k => Around(middle, radius, firstAngle + 2 * Math.PI * k / corners))]);

    /// <summary>A rectangle turned about its middle.</summary>
    public static Ring Rectangle(Point2 middle, double width, double height, double angle)
    {
        return new Ring([Corner(-1, -1), Corner(1, -1), Corner(1, 1), Corner(-1, 1)]);

        Point2 Corner(int right, int up)
        {
            double x = right * width / 2, y = up * height / 2;
            return new Point2(middle.X + x * Math.Cos(angle) - y * Math.Sin(angle), middle.Y + x * Math.Sin(angle) + y * Math.Cos(angle));
        }
    }

    /// <summary>The same ring the other way round.</summary>
    public static Ring Backwards(Ring ring) => new([.. ring.Corners.Reverse()]);

    /// <summary>Each corner of a region moved by the same rule.</summary>
    public static Region Moved(Region region, Func<Point2, Point2> rule) =>
        new(Moved(region.Outline, rule), [.. region.Cutouts.Select(c => Moved(c, rule))]);

    /// <summary>Area of a region [m²].</summary>
    public static double AreaOf(Region region) => Math.Abs(region.Outline.SignedArea) - region.Cutouts.Sum(c => Math.Abs(c.SignedArea));

    /// <summary>Length of all edges of a region [m].</summary>
    public static double PerimeterOf(Region region) => region.Cutouts.Prepend(region.Outline)
        .Sum(r => Enumerable.Range(0, r.Corners.Count).Sum(k => r.Corners[k].DistanceTo(r.Corners[(k + 1) % r.Corners.Count])));

    /// <summary>First moments of a region about the origin [m³], by the shoelace rule on the whole rings.</summary>
    public static (double X, double Y) MomentsOf(Region region)
    {
        (double x, double y) = MomentsOf(region.Outline);
        foreach (Ring cutout in region.Cutouts)
        {
            (double cutX, double cutY) = MomentsOf(cutout);
            (x, y) = (x - cutX, y - cutY);
        }

        return (x, y);
    }

    private static (double X, double Y) MomentsOf(Ring ring)
    {
        double x = 0, y = 0;
        for (int k = 0; k < ring.Corners.Count; k++)
        {
            Point2 a = ring.Corners[k], b = ring.Corners[(k + 1) % ring.Corners.Count];
            double cross = (a.X * b.Y - b.X * a.Y) * Math.Sign(ring.SignedArea);
            (x, y) = (x + cross * (a.X + b.X) / 6, y + cross * (a.Y + b.Y) / 6);
        }

        return (x, y);
    }

    private static Ring Moved(Ring ring, Func<Point2, Point2> rule) => new([.. ring.Corners.Select(rule)]);

    private static Point2 Around(Point2 middle, double radius, double angle) =>
        new(middle.X + radius * Math.Cos(angle), middle.Y + radius * Math.Sin(angle));
}

using CsCheck;
using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Tests.Grids;

/// <summary>Random regions: star-shaped outlines with none to two star-shaped cut-outs.</summary>
internal static class RandomRegions
{
    /// <summary>
    /// A region of about one metre, the side of a square [m] and a shift of the grid in squares; below one square, or a mirrored grid would have a
    /// column less.
    /// </summary>
    public static readonly Gen<(Region Region, double CellSize, Point2 Shift)> Cases =
        from outline in Star(5, 40, 0.25, 1)
        from left in Star(3, 12, 0.2, 0.95)
        from right in Star(3, 12, 0.2, 0.95)
        from holes in Gen.Int[0, 2]
        from cellSize in Gen.Double[0.02, 0.7]
        from shift in Gen.Select(Gen.Double[0, 0.99], Gen.Double[0, 0.99], (x, y) => new Point2(x, y))
        select (With(outline, left, right, holes), cellSize, shift);

    /// <summary>Lower left corner of a grid whose lines are shifted against the region's bounding box [m].</summary>
    public static Point2 OriginOf(Region region, double cellSize, Point2 shift) => new(
        region.Outline.Corners.Min(c => c.X) - shift.X * cellSize, region.Outline.Corners.Min(c => c.Y) - shift.Y * cellSize);

    private static Gen<Ring> Star(int fewest, int most, double nearest, double farthest) =>
        from count in Gen.Int[fewest, most]
        from start in Gen.Double[0, 2 * Math.PI]
        from steps in Gen.Double[0.3, 1].Array[count]
        from radii in Gen.Double[nearest, farthest].Array[count]
        select FromSteps(start, steps, radii);

    private static Ring FromSteps(double start, double[] steps, double[] radii)
    {
        double total = steps.Sum(), angle = start;
        var corners = new Point2[steps.Length];
        for (int k = 0; k < steps.Length; k++)
        {
            corners[k] = new Point2(radii[k] * Math.Cos(angle), radii[k] * Math.Sin(angle));
            angle += 2 * Math.PI * steps[k] / total;
        }

        return new Ring(corners);
    }

    private static Region With(Ring outline, Ring left, Ring right, int holes)
    {
        // A disc about the origin that fits inside the outline; the cut-outs lie in its two halves.
        double room = new RegionLocator(new Region(outline, [])).DistanceToEdge(new Point2(0, 0));
        Ring[] cutouts = [Put(left, -0.45 * room, 0.4 * room), Put(right, 0.45 * room, 0.4 * room)];
        return new Region(outline, cutouts[..holes]);
    }

    private static Ring Put(Ring ring, double x, double factor) => new([.. ring.Corners.Select(c => new Point2(x + factor * c.X, factor * c.Y))]);
}

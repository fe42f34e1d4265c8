using NetTopologySuite.Geometries;

namespace InfusionSim.Numerics.Geometry;

/// <summary>Turns rings and regions into the polygon library's shapes.</summary>
internal static class RegionShapes
{
    private static readonly GeometryFactory Factory = new();

    /// <summary>A region as a polygon with holes.</summary>
    /// <param name="region">The region.</param>
    public static Polygon ToPolygon(Region region) =>
        Factory.CreatePolygon(ToLinearRing(region.Outline), [.. region.Cutouts.Select(ToLinearRing)]);

    /// <summary>A border with holes as a polygon.</summary>
    /// <param name="border">The outer border.</param>
    /// <param name="holes">The holes.</param>
    public static Polygon ToPolygon(Ring border, IReadOnlyList<Ring> holes) => ToPolygon(new Region(border, holes));

    /// <summary>An upright rectangle.</summary>
    /// <param name="low">Lower left corner [m].</param>
    /// <param name="high">Upper right corner [m].</param>
    public static Polygon Rectangle(Point2 low, Point2 high) => ToPolygon(new Ring([low, new(high.X, low.Y), high, new(low.X, high.Y)]), []);

    /// <summary>A polygon of the library as a region.</summary>
    /// <param name="polygon">The polygon.</param>
    public static Region ToRegion(Polygon polygon) => new(ToRing(polygon.ExteriorRing), [.. polygon.InteriorRings.Select(ToRing)]);

    private static LinearRing ToLinearRing(Ring ring)
    {
        var places = new Coordinate[ring.Corners.Count + 1];
        for (int k = 0; k < ring.Corners.Count; k++) places[k] = new Coordinate(ring.Corners[k].X, ring.Corners[k].Y);
        places[^1] = places[0].Copy();
        return Factory.CreateLinearRing(places);
    }

    private static Ring ToRing(LineString line) => new([.. line.Coordinates.SkipLast(1).Select(c => new Point2(c.X, c.Y))]);
}

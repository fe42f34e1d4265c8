using NetTopologySuite.Algorithm.Locate;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Distance;

namespace InfusionSim.Numerics.Geometry;

/// <summary>Answers where a place stands to a region and its edge; built once per region.</summary>
public sealed class RegionLocator
{
    private readonly IndexedPointInAreaLocator locator;
    private readonly IndexedFacetDistance distance;
    private readonly Polygon polygon;

    /// <summary>Indexes a region.</summary>
    /// <param name="region">The region, free of faults.</param>
    public RegionLocator(Region region)
    {
        ArgumentNullException.ThrowIfNull(region);
        polygon = RegionShapes.ToPolygon(region);
        locator = new IndexedPointInAreaLocator(polygon);
        distance = new IndexedFacetDistance(polygon);
        // The library builds its indexes at the first question; asking here keeps later questions free of writes.
        Contains(region.Outline.Corners[0]);
        DistanceToEdge(region.Outline.Corners[0]);
    }

    /// <summary>Whether a place lies inside the region or on its edge.</summary>
    /// <param name="place">The place [m].</param>
    public bool Contains(Point2 place) => locator.Locate(new Coordinate(place.X, place.Y)) != Location.Exterior;

    /// <summary>Distance from a place, inside or outside, to the nearest place of the outline or a cut-out [m].</summary>
    /// <param name="place">The place [m].</param>
    public double DistanceToEdge(Point2 place) => distance.Distance(PointOf(place));

    /// <summary>The place of the outline or a cut-out nearest to a place [m].</summary>
    /// <param name="place">The place [m].</param>
    public Point2 NearestOnEdge(Point2 place)
    {
        Coordinate nearest = distance.NearestPoints(PointOf(place))[0];
        return new Point2(nearest.X, nearest.Y);
    }

    private Point PointOf(Point2 place) => polygon.Factory.CreatePoint(new Coordinate(place.X, place.Y));
}

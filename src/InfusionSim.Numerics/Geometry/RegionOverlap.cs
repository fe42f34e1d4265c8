using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;

namespace InfusionSim.Numerics.Geometry;

/// <summary>Tells how much of a ring lies inside a region.</summary>
public static class RegionOverlap
{
    // As for covers: above so many corners places are sampled instead of overlaid. Our choice.
    private const int MostOverlaidCorners = 300;

    private const int SampledRows = 100;

    /// <summary>Share of the ring's area that lies inside the region [-], 0 to 1.</summary>
    /// <param name="region">The region, free of faults.</param>
    /// <param name="ring">The ring, without crossings.</param>
    public static double ShareInside(Region region, Ring ring)
    {
        ArgumentNullException.ThrowIfNull(region);
        ArgumentNullException.ThrowIfNull(ring);
        Polygon area = RegionShapes.ToPolygon(ring, []), whole = RegionShapes.ToPolygon(region);
        if (!area.EnvelopeInternal.Intersects(whole.EnvelopeInternal)) return 0;
        int corners = ring.Corners.Count + region.Outline.Corners.Count + region.Cutouts.Sum(cutout => cutout.Corners.Count);
        if (corners > MostOverlaidCorners) return Sampled(region, ring, area.EnvelopeInternal);
        double inside = OverlayNGRobust.Overlay(area, whole, NetTopologySuite.Operation.Overlay.SpatialFunction.Intersection).Area;
        return Math.Clamp(inside / area.Area, 0, 1);
    }

    private static double Sampled(Region region, Ring ring, Envelope box)
    {
        var locator = new RegionLocator(region);
        var area = new RingLocator(ring);
        int met = 0, inside = 0;
        for (int k = 0; k < SampledRows * SampledRows; k++)
        {
            var place = new Point2(
                box.MinX + (k % SampledRows + 0.5) / SampledRows * box.Width,
                box.MinY + (k / SampledRows + 0.5) / SampledRows * box.Height);
            if (!area.Contains(place)) continue;
            met++;
            if (locator.Contains(place)) inside++;
        }

        return met == 0 ? 0 : (double)inside / met;
    }
}

using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.OverlayNG;

namespace InfusionSim.Numerics.Geometry;

/// <summary>Tells whether rings cover a region.</summary>
public static class RegionCover
{
    // Seams between neighbours are drawn with rounded numbers; gaps below this share of the region are such seams. Our choice.
    private const double SeamShare = 1e-9;

    // Two combs of n teeth each cross n² times; above so many corners places are sampled instead of overlaid. Our choice.
    private const int MostOverlaidCorners = 300;

    private const int SampledRows = 100;

    /// <summary>What the rings leave open, or null when they cover the region.</summary>
    /// <param name="region">The region, free of faults.</param>
    /// <param name="rings">The rings, each without crossings; they may overlap and reach beyond the region.</param>
    public static UncoveredPart? FindGap(Region region, IReadOnlyList<Ring> rings)
    {
        ArgumentNullException.ThrowIfNull(region);
        ArgumentNullException.ThrowIfNull(rings);
        Polygon whole = RegionShapes.ToPolygon(region);
        return rings.Sum(ring => ring.Corners.Count) > MostOverlaidCorners ? SampleGap(region, whole, rings) : OverlayGap(whole, rings);
    }

    private static UncoveredPart? OverlayGap(Polygon whole, IReadOnlyList<Ring> rings)
    {
        NetTopologySuite.Geometries.Geometry open = whole;
        foreach (Ring ring in rings)
            open = OverlayNGRobust.Overlay(open, RegionShapes.ToPolygon(ring, []), NetTopologySuite.Operation.Overlay.SpatialFunction.Difference);
        if (open.Area <= SeamShare * whole.Area) return null;
        Point inside = Enumerable.Range(0, open.NumGeometries).Select(open.GetGeometryN).MaxBy(piece => piece.Area)!.InteriorPoint;
        return new UncoveredPart(open.Area, new Point2(inside.X, inside.Y));
    }

    private static UncoveredPart? SampleGap(Region region, Polygon whole, IReadOnlyList<Ring> rings)
    {
        var locator = new RegionLocator(region);
        RingLocator[] areas = [.. rings.Select(ring => new RingLocator(ring))];
        Envelope box = whole.EnvelopeInternal;
        int missed = 0, met = 0;
        Point2 first = default;
        for (int k = 0; k < SampledRows * SampledRows; k++)
        {
            var place = new Point2(
                box.MinX + (k % SampledRows + 0.5) / SampledRows * box.Width,
                box.MinY + (k / SampledRows + 0.5) / SampledRows * box.Height);
            if (!locator.Contains(place)) continue;
            met++;
            if (areas.Any(area => area.Contains(place))) continue;
            if (missed++ == 0) first = place;
        }

        return missed == 0 ? null : new UncoveredPart(whole.Area * missed / met, first);
    }
}

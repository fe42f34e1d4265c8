using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Lines;

/// <summary>The stretches of a line that do not follow an edge of the cloth.</summary>
internal static class InnerStretches
{
    public static IEnumerable<Segment> Of(IReadOnlyList<Point2> path, EdgeFollowing following, Region region)
    {
        Segment[] edges = [.. EdgesOf(region)];
        foreach (Segment segment in Segment.Between(path))
        {
            var onEdge = new Intervals();
            foreach (Segment edge in edges)
            {
                // Round a corner of the outline the line changes edges; no stretch between the two counts as inside.
                if (following.Along(segment, edge, following.Reach) is (double from, double to)) onEdge.Add(from, to);
            }

            foreach ((double from, double to) in onEdge.Gaps(0, 1)) yield return new(segment.At(from), segment.At(to));
        }
    }

    private static IEnumerable<Segment> EdgesOf(Region region)
    {
        foreach (Ring ring in region.Cutouts.Prepend(region.Outline))
        {
            Point2 before = ring.Corners[^1];
            foreach (Point2 corner in ring.Corners)
            {
                if (before != corner) yield return new(before, corner);
                before = corner;
            }
        }
    }
}

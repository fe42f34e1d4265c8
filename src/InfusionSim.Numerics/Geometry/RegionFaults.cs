using NetTopologySuite.Algorithm;
using NetTopologySuite.Geometries;
using NetTopologySuite.Index.Strtree;

namespace InfusionSim.Numerics.Geometry;

/// <summary>Looks for what would keep a drawn region from being cut into cells.</summary>
public static class RegionFaults
{
    // A ring thinner than this against its own size is a line to double precision; our choice.
    private const double ThinnestShare = 1e-12;

    /// <summary>All faults, by ring; of each kind only the first place per pair of rings. Empty for a region that can be cut.</summary>
    /// <param name="region">The region as drawn; any numbers. Equal points in a row count once.</param>
    public static IReadOnlyList<RegionFault> Find(Region region)
    {
        ArgumentNullException.ThrowIfNull(region);
        var faults = new List<RegionFault>();
        Ring[] rings = [region.Outline, .. region.Cutouts];
        // A power of two near the largest coordinate keeps products of huge or tiny numbers in range and changes no digit.
        double scale = ScaleOf(rings);
        var sound = new bool[rings.Length];
        var tree = new STRtree<RingEdge>();
        var edges = new List<RingEdge>();
        for (int k = 0; k < rings.Length; k++)
        {
            if (FaultOfRing(rings[k], k, scale) is { } fault)
            {
                faults.Add(fault);
                continue;
            }

            sound[k] = true;
            AddEdges(rings[k], k, scale, edges);
        }

        foreach (RingEdge edge in edges) tree.Insert(new Envelope(edge.Start, edge.End), edge);
        var met = new Dictionary<(int, int), RegionFault>();
        int everyPair = rings.Length * (rings.Length + 1) / 2;
        foreach (RingEdge edge in edges)
        {
            if (met.Count == everyPair) break;
            FindMeetings(edge, tree, scale, met);
        }

        foreach (RegionFault fault in met.Values)
        {
            faults.Add(fault);
            if (fault.Kind == RegionFaultKind.CrossesItself) sound[fault.RingIndex] = false;
        }

        FindMisplaced(rings, sound, met, faults);
        return [.. faults.OrderBy(f => f.RingIndex).ThenBy(f => f.Kind)];
    }

    private static double ScaleOf(Ring[] rings)
    {
        double largest = 0;
        foreach (Ring ring in rings)
        {
            foreach (Point2 corner in ring.Corners)
            {
                if (double.IsFinite(corner.X)) largest = Math.Max(largest, Math.Abs(corner.X));
                if (double.IsFinite(corner.Y)) largest = Math.Max(largest, Math.Abs(corner.Y));
            }
        }

        return largest > 0 ? Math.ScaleB(1, Math.Clamp(-Math.ILogB(largest), -1020, 1020)) : 1;
    }

    private static RegionFault? FaultOfRing(Ring ring, int index, double scale)
    {
        foreach (Point2 corner in ring.Corners)
        {
            if (!double.IsFinite(corner.X) || !double.IsFinite(corner.Y)) return new RegionFault(RegionFaultKind.NotFinite, index, index, corner);
        }

        Point2 place = ring.Corners.Count > 0 ? ring.Corners[0] : default;
        if (ring.Corners.Distinct().Take(3).Count() < 3) return new RegionFault(RegionFaultKind.TooFewPoints, index, index, place);
        var local = new Ring([.. ring.Corners.Select(c => new Point2((c.X - place.X) * scale, (c.Y - place.Y) * scale))]);
        double length = 0;
        for (int k = 0; k < local.Corners.Count; k++) length += local.Corners[k].DistanceTo(local.Corners[(k + 1) % local.Corners.Count]);
        return Math.Abs(local.SignedArea) > ThinnestShare * length * length ? null : AreaFault(local, index, place, length);
    }

    private static RegionFault? AreaFault(Ring local, int index, Point2 place, double length)
    {
        // A figure of eight has no net area either; it is a crossing, and the corners off the line tell the two apart.
        Point2 far = local.Corners.MaxBy(c => c.X * c.X + c.Y * c.Y);
        bool isLine = local.Corners.All(c => Math.Abs(far.X * c.Y - far.Y * c.X) <= ThinnestShare * length * length);
        return isLine ? new RegionFault(RegionFaultKind.NoArea, index, index, place) : null;
    }

    private static void AddEdges(Ring ring, int index, double scale, List<RingEdge> edges)
    {
        Coordinate[] corners = [.. ring.Corners.Select(c => new Coordinate(c.X * scale, c.Y * scale))];
        corners = [.. corners.Where((c, k) => !c.Equals2D(corners[(k + 1) % corners.Length]))];
        for (int k = 0; k < corners.Length; k++) edges.Add(new RingEdge(index, k, corners.Length, corners[k], corners[(k + 1) % corners.Length]));
    }

    private static void FindMeetings(RingEdge edge, STRtree<RingEdge> tree, double scale, Dictionary<(int, int), RegionFault> met)
    {
        var intersector = new RobustLineIntersector();
        foreach (RingEdge other in tree.Query(new Envelope(edge.Start, edge.End)))
        {
            bool isLater = other.RingIndex > edge.RingIndex || (other.RingIndex == edge.RingIndex && other.Position > edge.Position);
            if (!isLater || edge.IsClearOf(other) || met.ContainsKey((edge.RingIndex, other.RingIndex))) continue;
            intersector.ComputeIntersection(edge.Start, edge.End, other.Start, other.End);
            if (!intersector.HasIntersection || (edge.IsBeside(other) && intersector.IntersectionNum == 1)) continue;
            Coordinate at = intersector.GetIntersection(0);
            RegionFaultKind kind = edge.RingIndex == other.RingIndex ? RegionFaultKind.CrossesItself
                : edge.RingIndex == 0 ? RegionFaultKind.CutoutMeetsOutline
                : RegionFaultKind.CutoutsMeet;
            // A cut-out is named first when it meets the outline: it is the one to move.
            (int ring, int meets) = edge.RingIndex == 0 ? (other.RingIndex, 0) : (edge.RingIndex, other.RingIndex);
            met[(edge.RingIndex, other.RingIndex)] = new RegionFault(kind, ring, meets, new Point2(at.X / scale, at.Y / scale));
        }
    }

    private static void FindMisplaced(Ring[] rings, bool[] sound, Dictionary<(int, int), RegionFault> met, List<RegionFault> faults)
    {
        RingLocator?[] locators = [.. rings.Select((ring, k) => sound[k] ? new RingLocator(ring) : null)];
        for (int k = 1; k < rings.Length; k++)
        {
            if (!sound[k]) continue;
            Point2 corner = rings[k].Corners[0];
            if (!met.ContainsKey((0, k)) && locators[0] is { } outline && !outline.Contains(corner)) faults.Add(new RegionFault(RegionFaultKind.CutoutOutside, k, 0, corner));
            for (int other = 1; other < rings.Length; other++)
            {
                if (other == k || met.ContainsKey((Math.Min(k, other), Math.Max(k, other)))) continue;
                if (locators[other] is { } around && around.Contains(corner)) faults.Add(new RegionFault(RegionFaultKind.CutoutsMeet, k, other, corner));
            }
        }
    }

    private sealed record RingEdge(int RingIndex, int Position, int Count, Coordinate Start, Coordinate End)
    {
        // Long slanted edges lie in one another's boxes without meeting; a side that no rounding can turn spares the exact test.
        // Coordinates are below 2 here, so a cross product is off by less than 1e-14 times the edge's length.
        public bool IsClearOf(RingEdge other)
        {
            double x = End.X - Start.X, y = End.Y - Start.Y, unsure = 1e-13 * (Math.Abs(x) + Math.Abs(y));
            double start = x * (other.Start.Y - Start.Y) - y * (other.Start.X - Start.X), end = x * (other.End.Y - Start.Y) - y * (other.End.X - Start.X);
            return (start > unsure && end > unsure) || (start < -unsure && end < -unsure);
        }

        public bool IsBeside(RingEdge other) =>
            RingIndex == other.RingIndex && ((Position + 1) % Count == other.Position || (other.Position + 1) % Count == Position);
    }
}

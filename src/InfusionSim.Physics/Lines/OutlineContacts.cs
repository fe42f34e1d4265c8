using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Lines;

/// <summary>Contacts of the part of a line that follows the outline or a cut-out: through the true edge of the cut cells.</summary>
/// <remarks>Each covered stretch of an edge conducts its length over the resistance of the way from the cell's middle straight to the edge.</remarks>
internal static class OutlineContacts
{
    public static void Add(
        ContactTable contacts, IReadOnlyList<Point2> path, EdgeFollowing following, CutCellGrid cells, ClothMap cloth, IReadOnlyList<WallExit> exits)
    {
        Segment[] segments = [.. Segment.Between(path)];
        foreach (EdgePiece piece in cells.EdgePieces)
        {
            if (!(piece.Length > 0) || !cells.HasCloth(piece.Cell)) continue;
            double covered = CoveredLength(segments, new(piece.Start, piece.End), following);
            if (covered > 0 && WallWays.Resistance(piece, cells, cloth) is > 0 and < double.PositiveInfinity and double resistance) contacts.AddBeyond(piece.Cell, covered / resistance);
        }

        foreach (WallExit exit in exits)
        {
            double covered = CoveredLength(segments, exit.Wall, following);
            if (covered > 0) contacts.AddBeyond(exit.Cell, exit.Conductance * covered / exit.Wall.Length, exit.IsNextCell);
        }
    }

    /// <summary>Whether a feed, an open vent or a gap lies along most of each edge piece, in the order of the cells' list.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="cells">Its cells.</param>
    public static IReadOnlyList<bool> FedPieces(Panel panel, CutCellGrid cells) => Fed(panel, [.. cells.EdgePieces.Select(piece => new Segment(piece.Start, piece.End))]);

    /// <summary>Whether a feed, an open vent or a gap lies where each slanted way ends on an edge, in the order of the list.</summary>
    /// <param name="panel">The panel.</param>
    /// <param name="exits">The slanted ways.</param>
    public static IReadOnlyList<bool> FedExits(Panel panel, IReadOnlyList<WallExit> exits) => Fed(panel, [.. exits.Select(exit => exit.Wall)]);

    private static bool[] Fed(Panel panel, Segment[] edges)
    {
        bool[] fed = new bool[edges.Length];
        if (fed.Length == 0) return fed;
        foreach ((LinePath path, EdgeFollowing following) in panel.Feeds.Select(feed => (feed.Path, EdgeFollowing.ForContactWidth(feed.ContactWidth)))
            .Concat(panel.Vents.Where(vent => vent.Kind == VentKind.Tube).Select(vent => (vent.Path, EdgeFollowing.ForContactWidth(vent.ContactWidth))))
            .Concat(panel.Gaps.Select(gap => (gap.Path, EdgeFollowing.ForGap(gap.Width)))))
        {
            if (path.IsFitting) continue;
            Segment[] segments = [.. Segment.Between(path.Points)];
            for (int k = 0; k < fed.Length; k++) fed[k] |= edges[k].Length > 0 && CoveredLength(segments, edges[k], following) > edges[k].Length / 2;
        }

        return fed;
    }

    private static double CoveredLength(Segment[] segments, Segment edge, EdgeFollowing following)
    {
        double length = edge.Length, ex = (edge.To.X - edge.From.X) / length, ey = (edge.To.Y - edge.From.Y) / length;
        var covered = new Intervals();
        foreach (Segment segment in segments)
        {
            if (following.Along(segment, edge, 0) is not (double from, double to)) continue;
            double a = Project(segment.At(from)), b = Project(segment.At(to));
            covered.Add(Math.Max(0, Math.Min(a, b)), Math.Min(length, Math.Max(a, b)));
        }

        return covered.Joined().Sum(part => part.To - part.From);

        double Project(Point2 place) => ex * (place.X - edge.From.X) + ey * (place.Y - edge.From.Y);
    }
}

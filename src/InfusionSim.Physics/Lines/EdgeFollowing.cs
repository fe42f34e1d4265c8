namespace InfusionSim.Physics.Lines;

/// <summary>Decides where a line follows an edge of the cloth closely enough to feed through it.</summary>
/// <remarks>
/// A stretch follows an edge where it runs within 1 mm of it, never more than half the width of the contact, and within
/// 30° of its direction, so that a line that ends on an edge does not feed through it (our choice: 1 mm is about as exactly
/// as a line can be laid).
/// </remarks>
/// <param name="Reach">Largest distance between line and edge [m].</param>
internal readonly record struct EdgeFollowing(double Reach)
{
    private const double LargestReach = 1e-3;
    private const double LargestSine = 0.5;

    public static EdgeFollowing ForContactWidth(double contactWidth) => new(Math.Min(LargestReach, contactWidth / 2));

    /// <summary>A gap lies beside the edge it is drawn on, or beyond it by half its width.</summary>
    public static EdgeFollowing ForGap(double width) => new(Math.Max(LargestReach, width / 2));

    /// <summary>Stretch of a segment that runs along an edge, as shares of the segment; null when there is none.</summary>
    /// <param name="segment">Stretch of the line.</param>
    /// <param name="edge">The edge.</param>
    /// <param name="overhang">How far it may reach beyond the edge's ends [m].</param>
    public (double From, double To)? Along(Segment segment, Segment edge, double overhang)
    {
        if (AreApart(segment, edge, Reach + overhang)) return null;
        double length = edge.Length, own = segment.Length;
        double ex = (edge.To.X - edge.From.X) / length, ey = (edge.To.Y - edge.From.Y) / length;
        double dx = segment.To.X - segment.From.X, dy = segment.To.Y - segment.From.Y;
        double across = ex * dy - ey * dx;
        if (Math.Abs(across) > LargestSine * own) return null;
        double fx = segment.From.X - edge.From.X, fy = segment.From.Y - edge.From.Y;
        (double from, double to) = Clip((0, 1), ex * fy - ey * fx, across, -Reach, Reach);
        (from, to) = Clip((from, to), ex * fx + ey * fy, ex * dx + ey * dy, -overhang, length + overhang);
        return to > from ? (from, to) : null;
    }

    private static bool AreApart(Segment a, Segment b, double distance) =>
        Math.Min(a.From.X, a.To.X) > Math.Max(b.From.X, b.To.X) + distance || Math.Max(a.From.X, a.To.X) < Math.Min(b.From.X, b.To.X) - distance
        || Math.Min(a.From.Y, a.To.Y) > Math.Max(b.From.Y, b.To.Y) + distance || Math.Max(a.From.Y, a.To.Y) < Math.Min(b.From.Y, b.To.Y) - distance;

    // Shares t of the range with low ≤ start + t·slope ≤ high.
    private static (double From, double To) Clip((double From, double To) range, double start, double slope, double low, double high)
    {
        if (slope == 0) return start >= low && start <= high ? range : (1, 0);
        double a = (low - start) / slope, b = (high - start) / slope;
        return (Math.Max(range.From, Math.Min(a, b)), Math.Min(range.To, Math.Max(a, b)));
    }
}

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Lines;

/// <summary>Where a line crosses the way between two neighbouring middles.</summary>
/// <param name="Share">How far along the way from the left or lower middle [-], 0 to 1.</param>
/// <param name="Stretch">The stretch that crosses.</param>
/// <param name="Contacts">Contacts of its line.</param>
/// <param name="IsFeed">Whether the line brings resin.</param>
/// <param name="HalfWidth">Half the width of a gap [m]; 0 for a line.</param>
internal readonly record struct LineCrossing(double Share, Segment Stretch, ContactTable Contacts, bool IsFeed, double HalfWidth = 0)
{
    // A gap over the middle of a cell takes the cell in; nearer than this it would only make the numbers harder to solve for.
    private const double LeastBesideGap = 0.02;

    /// <summary>Share of a way that is cloth from one of its ends to the line, or to the near side of the gap [-].</summary>
    /// <param name="share">Share from that end to the middle of the line [-].</param>
    /// <param name="from">One end of the way [m].</param>
    /// <param name="to">The other [m].</param>
    public double ClothOf(double share, Point2 from, Point2 to) => HalfWidth == 0 ? share : Math.Max(LeastBesideGap, share - HalfShare(from, to));

    /// <summary>How far a gap reaches beyond the end of a way that it takes in, as a share of the way [-], at most one half; 0 where it does not.</summary>
    /// <param name="share">Share from that end to the middle of the line [-].</param>
    /// <param name="from">One end of the way [m].</param>
    /// <param name="to">The other [m].</param>
    public double Beyond(double share, Point2 from, Point2 to) => HalfWidth == 0 ? 0 : Math.Clamp(HalfShare(from, to) - share, 0, 0.5);

    private double HalfShare(Point2 from, Point2 to)
    {
        double x = (Stretch.To.X - Stretch.From.X) / Stretch.Length, y = (Stretch.To.Y - Stretch.From.Y) / Stretch.Length;
        double across = Math.Abs(x * (to.Y - from.Y) - y * (to.X - from.X));
        return HalfWidth / Math.Max(across, HalfWidth);
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Gravity;

/// <summary>Heights of places on a panel that lies askew, and of the pots that feed it.</summary>
internal static class PlaneHeights
{
    /// <summary>Height of a place above the origin of the drawing [m]: (x cos u + y sin u) sin a, with u the direction of rise and a the angle of the plane.</summary>
    /// <param name="slope">How the panel lies; null for level.</param>
    /// <param name="place">The place [m].</param>
    public static double Of(Slope? slope, Point2 place) =>
        slope is null ? 0 : (place.X * Math.Cos(slope.Uphill) + place.Y * Math.Sin(slope.Uphill)) * Math.Sin(slope.Angle);

    /// <summary>Height of the lowest place of any feed above the origin of the drawing [m].</summary>
    /// <param name="panel">The panel.</param>
    public static double OfLowestFeed(Panel panel) =>
        panel.Feeds.SelectMany(static feed => feed.Path.Points).Min(place => Of(panel.Slope, place));

    /// <summary>Height of the resin in the pot of each feed above the origin of the drawing [m], in the panel's order.</summary>
    /// <remarks>The level of a named pot counts from the fitting of the first feed it serves: where that feed's hose joins, or the first point of its line. A pot without a name stands level with the lowest feed.</remarks>
    /// <param name="panel">The panel.</param>
    public static double[] OfPots(Panel panel)
    {
        double lowest = OfLowestFeed(panel);
        return [.. panel.Feeds.Select(feed => panel.Pots.FirstOrDefault(pot => pot.Name == feed.Pot) is Pot pot ? OfPot(panel, pot) : lowest)];
    }

    /// <summary>Where a feed's hose joins its line, or the first point of the line [m].</summary>
    /// <param name="feed">The feed.</param>
    public static Point2 FittingOf(Feed feed) => feed.Hose?.JoinsAt ?? feed.Path.Points[0];

    private static double OfPot(Panel panel, Pot pot)
    {
        Feed first = panel.Feeds.First(feed => feed.Pot == pot.Name);
        return Of(panel.Slope, FittingOf(first)) + pot.Level;
    }
}

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Gravity;

/// <summary>Resin would run back out of a place that is full already, which is not computed.</summary>
/// <remarks>The pressure there would fall below that under the bag: a wet vent or another pot lower down draws it away. It is a limit of the method, not a fault of the program.</remarks>
public sealed class ResinRunsBackException : NotSupportedException
{
    /// <summary>Makes an exception.</summary>
    /// <param name="place">Where [m]; null for a place in a line.</param>
    /// <param name="clock">Drive clock [-].</param>
    public ResinRunsBackException(Point2? place, double clock) : base(Message(place))
    {
        Place = place;
        Clock = clock;
    }

    /// <summary>Makes an exception for resin that runs back into a pot.</summary>
    /// <param name="feed">Name of the feed.</param>
    /// <param name="clock">Drive clock [-].</param>
    public ResinRunsBackException(string feed, double clock)
        : base($"Under the vacuum as it is changed the pot of {feed} stands too low: resin would run back into it out of cloth "
            + $"that is full already; that is not computed. Clamp {feed} before, raise the pot, or change the vacuum by less.")
    {
        Feed = feed;
        Clock = clock;
    }

    /// <summary>Feed through which it runs back into the pot; null when it does so within the panel.</summary>
    public string? Feed { get; }

    /// <summary>Where [m]; null for a place in a line, and for a pot.</summary>
    public Point2? Place { get; }

    /// <summary>Drive clock [-].</summary>
    public double Clock { get; }

    private new static string Message(Point2? place) =>
        $"On this slope resin would run back out of a place that is full already{At(place)}; that is not computed. "
        + "Put the vent, or the lower pot, higher, or shut it when resin shows, and leave a feed open until the panel is full.";

    private static string At(Point2? place) => place is Point2 at ? $", at x = {at.X * 1e3:0} mm, y = {at.Y * 1e3:0} mm" : "";
}

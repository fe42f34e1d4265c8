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

    /// <summary>Where [m]; null for a place in a line.</summary>
    public Point2? Place { get; }

    /// <summary>Drive clock [-].</summary>
    public double Clock { get; }

    private new static string Message(Point2? place) =>
        $"On this slope resin would run back out of a place that is full already{(place is Point2 at ? $", at x = {at.X * 1e3:0} mm, y = {at.Y * 1e3:0} mm" : "")}; that is not computed. "
        + "Put the vent, or the lower pot, higher, or shut it when resin shows.";
}

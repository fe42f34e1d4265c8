using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Shapes;

/// <summary>Points, lines and outlines of a plan, from plain numbers in millimetres.</summary>
public static class Drawing
{
    /// <summary>A place.</summary>
    /// <param name="x">To the right [mm].</param>
    /// <param name="y">Up [mm].</param>
    public static Point At(double x, double y) => new() { XMm = Math.Round(x, 2), YMm = Math.Round(y, 2) };

    /// <summary>An outline.</summary>
    /// <param name="points">Its corners.</param>
    public static Ring Outline(params IEnumerable<Point> points) => new() { Points = { points } };

    /// <summary>A rectangle.</summary>
    /// <param name="left">Left edge [mm].</param>
    /// <param name="bottom">Lower edge [mm].</param>
    /// <param name="right">Right edge [mm].</param>
    /// <param name="top">Upper edge [mm].</param>
    public static Ring Rectangle(double left, double bottom, double right, double top) =>
        Outline(At(left, bottom), At(right, bottom), At(right, top), At(left, top));

    /// <summary>A circle as a polygon.</summary>
    /// <param name="centre">Its middle.</param>
    /// <param name="diameter">Diameter through the corners [mm].</param>
    /// <param name="corners">Number of corners [-].</param>
    public static Ring Circle(Point centre, double diameter, int corners)
    {
        ArgumentNullException.ThrowIfNull(centre);
        return Outline(Enumerable.Range(0, corners).Select(k => At(
            centre.XMm + diameter / 2 * Math.Cos(2 * Math.PI * k / corners),
            centre.YMm + diameter / 2 * Math.Sin(2 * Math.PI * k / corners))));
    }

    /// <summary>A feed line, or a fitting if there is one point.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="points">Its corners in order.</param>
    public static Feed Feed(string name, params IEnumerable<Point> points) => new() { Name = name, Path = new Protocol.V1.Path { Points = { points } }, ContactWidthMm = 12 };

    /// <summary>A vent line, or a fitting if there is one point.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="points">Its corners in order.</param>
    public static Vent Vent(string name, params IEnumerable<Point> points) => new() { Name = name, Path = new Protocol.V1.Path { Points = { points } }, ContactWidthMm = 12 };

    /// <summary>A timing mark.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="at">Where it lies.</param>
    public static TimingMark Mark(string name, Point at) => new() { Name = name, At = at };

    /// <summary>The corners of a ring, the first once more at the end: a line all the way round.</summary>
    /// <param name="ring">The ring.</param>
    public static IEnumerable<Point> AllRound(Ring ring)
    {
        ArgumentNullException.ThrowIfNull(ring);
        return ring.Points.Append(ring.Points[0]).Select(point => point.Clone());
    }
}

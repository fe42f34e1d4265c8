using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Verification.Tests.Settings;

/// <summary>Outlines and paths of the problems.</summary>
public static class Shapes
{
    /// <summary>Angle by which shapes are turned off the grid [rad]: 17°, near no symmetry of the squares.</summary>
    public const double Turn = 17 * Math.PI / 180;

    /// <summary>Rectangle with its lower left corner at the origin.</summary>
    /// <param name="width">Extent in x [m].</param>
    /// <param name="height">Extent in y [m].</param>
    public static Ring Rectangle(double width, double height) => Box(0, 0, width, height);

    /// <summary>Rectangle between two corners.</summary>
    /// <param name="left">Smallest x [m].</param>
    /// <param name="bottom">Smallest y [m].</param>
    /// <param name="right">Largest x [m].</param>
    /// <param name="top">Largest y [m].</param>
    public static Ring Box(double left, double bottom, double right, double top) =>
        new([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]);

    /// <summary>Ellipse as a polygon of the same area.</summary>
    /// <param name="centre">Centre [m].</param>
    /// <param name="a">Semi-axis in x [m].</param>
    /// <param name="b">Semi-axis in y [m].</param>
    /// <param name="corners">Corners of the polygon [-].</param>
    public static Ring Ellipse(Point2 centre, double a, double b, int corners = 1440)
    {
        // Blown up so that the polygon has the ellipse's area: the shape error is then of the order of one part in a million.
        double swell = Math.Sqrt(2 * Math.PI / corners / Math.Sin(2 * Math.PI / corners));
        return new([.. Enumerable.Range(0, corners).Select(k => 2 * Math.PI * k / corners)
            .Select(angle => new Point2(centre.X + swell * a * Math.Cos(angle), centre.Y + swell * b * Math.Sin(angle)))]);
    }

    /// <summary>Equilateral triangle with its base on the x axis from the origin.</summary>
    /// <param name="side">Side [m].</param>
    public static Ring EquilateralTriangle(double side) =>
        new([new(0, 0), new(side, 0), new(side / 2, side * Math.Sqrt(3) / 2)]);

    /// <summary>Turns a place anticlockwise about the origin.</summary>
    /// <param name="place">The place [m].</param>
    /// <param name="angle">Angle [rad].</param>
    public static Point2 Turned(this Point2 place, double angle) =>
        angle == 0 ? place : new(place.X * Math.Cos(angle) - place.Y * Math.Sin(angle), place.X * Math.Sin(angle) + place.Y * Math.Cos(angle));

    /// <summary>Turns a ring anticlockwise about the origin.</summary>
    /// <param name="ring">The ring.</param>
    /// <param name="angle">Angle [rad].</param>
    public static Ring Turned(this Ring ring, double angle) => new([.. ring.Corners.Select(corner => corner.Turned(angle))]);

    /// <summary>The ring as a closed path, for a line laid round the whole edge.</summary>
    /// <param name="ring">The ring.</param>
    public static LinePath AsPath(this Ring ring) => new([.. ring.Corners, ring.Corners[0]]);

    /// <summary>Lower left corner of a ring's bounding box [m].</summary>
    /// <param name="ring">The ring.</param>
    public static Point2 LowerLeft(this Ring ring) => new(ring.Corners.Min(corner => corner.X), ring.Corners.Min(corner => corner.Y));

    /// <summary>Upper right corner of a ring's bounding box [m].</summary>
    /// <param name="ring">The ring.</param>
    public static Point2 UpperRight(this Ring ring) => new(ring.Corners.Max(corner => corner.X), ring.Corners.Max(corner => corner.Y));
}

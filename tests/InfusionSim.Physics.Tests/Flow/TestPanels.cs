using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Flow;

/// <summary>Panels that several tests lay lines on.</summary>
internal static class TestPanels
{
    public static readonly Zone Cloth = ZoneOf("cloth", 3e-3, 0.5, 1e-10, 1e-10);

    public static Zone ZoneOf(string name, double thickness, double porosity, double k1, double k2, double angle = 0, Ring? area = null) =>
        new(name, area, thickness, porosity, new Permeability(k1, k2, k1, angle));

    public static Ring Rectangle(double left, double bottom, double right, double top) =>
        new([new(left, bottom), new(right, bottom), new(right, top), new(left, top)]);

    public static Ring Disc(double radius, int corners) => new([.. Enumerable.Range(0, corners).Select(k =>
    {
        double angle = 2 * Math.PI * (k + 0.5) / corners;
        return new Point2(radius * Math.Cos(angle), radius * Math.Sin(angle));
    })]);

    public static LinePath Path(params (double X, double Y)[] points) => new([.. points.Select(p => new Point2(p.X, p.Y))]);

    public static LinePath Around(Ring ring) => new([.. ring.Corners, ring.Corners[0]]);

    public static Feed Feed(LinePath path, double width = 0.012) => new("F", path, width);

    public static Vent Vent(LinePath path, VentKind kind = VentKind.Tube, double width = 0.012) => new("V", path, width, kind);

    public static Panel Panel(Ring outline, double cellSize, IReadOnlyList<Zone> zones, IReadOnlyList<Feed> feeds, params Vent[] vents) =>
        new(new Region(outline, []), zones, feeds, vents, [], cellSize);

    /// <summary>A strip fed through its left edge.</summary>
    public static Panel Strip(double length, double height, double cellSize, params Zone[] zones) =>
        Panel(Rectangle(0, 0, length, height), cellSize, zones, [Feed(Path((0, 0), (0, height)))]);
}

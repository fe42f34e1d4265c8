using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Benchmarks.Filling;

/// <summary>A square panel of two lay-ups with a cut-out, fed along half of one edge: what a fill is timed on.</summary>
internal static class BenchmarkPanel
{
    private const double Side = 1;

    /// <summary>Cuts the panel into squares.</summary>
    /// <param name="across">Squares along a side [-].</param>
    public static FillProblem Of(int across) => FillProblemBuilder.Build(Drawn(across));

    /// <summary>The panel with a flow mesh that stops a tenth of its side before the vent, on a laminate of three sub-layers, cut into squares.</summary>
    /// <param name="across">Squares along a side [-].</param>
    public static FillProblem Meshed(int across) => FillProblemBuilder.Build(Drawn(across) with
    {
        FlowMeshes = [new FlowMesh("mesh", Rectangle(0, 0, 0.9 * Side, Side), PanelFace.BagSide, 0.001, 0.85, new Permeability(3e-9, 3e-9, 1e-8, 0))],
        SubLayers = 3,
    });

    /// <summary>The panel before it is cut.</summary>
    /// <param name="across">Squares along a side [-].</param>
    public static Panel Drawn(int across) => new(
        new Region(Rectangle(0, 0, Side, Side), [Rectangle(0.4, 0.55, 0.6, 0.7)]),
        [
            new Zone("skin", null, 0.003, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0)),
            new Zone("core edge", Rectangle(0.5, 0.1, 0.8, 0.4), 0.005, 0.55, new Permeability(4e-11, 4e-11, 4e-13, 0)),
        ],
        [new Feed("F1", Line(0, 0.1, 0, 0.6), 0.012)],
        [new Vent("V1", Line(Side, 0.2, Side, 0.9), 0.012, VentKind.Tube)],
        [],
        Side / across);

    private static LinePath Line(double x1, double y1, double x2, double y2) => new([new Point2(x1, y1), new Point2(x2, y2)]);

    private static Ring Rectangle(double left, double low, double right, double high) =>
        new([new Point2(left, low), new Point2(right, low), new Point2(right, high), new Point2(left, high)]);
}

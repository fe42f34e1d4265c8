using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Laminates;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Laminates;

public sealed class ZoneAreasTests
{
    private static readonly Permeability Cloth = new(1e-10, 1e-10, 1e-12, 0);

    // 0.6 × 0.4 m with a hole of 0.1 × 0.1 m; a patch of 0.2 × 0.2 m over a corner of the hole and beyond the edge; squares that fit neither.
    [Fact]
    public void Areas_OfAPatchOnAWhole_ShareOutTheCloth()
    {
        Region region = new(Rectangle(0, 0, 0.6, 0.4), [Rectangle(0.2, 0.1, 0.3, 0.2)]);
        Panel panel = new(
            region, [new("whole", null, 0.003, 0.5, Cloth), new("patch", Rectangle(0.25, -0.1, 0.45, 0.15), 0.004, 0.5, Cloth)], [], [], [], 0.017);

        IReadOnlyList<double> areas = ZoneAreas.Of(panel, CutCellBuilder.Build(region, panel.CellSize));

        areas[1].ShouldBe(0.2 * 0.15 - 0.05 * 0.05, 1e-12);
        areas[0].ShouldBe(0.24 - 0.01 - areas[1], 1e-12);
    }

    private static Ring Rectangle(double left, double low, double right, double high) =>
        new([new(left, low), new(right, low), new(right, high), new(left, high)]);
}

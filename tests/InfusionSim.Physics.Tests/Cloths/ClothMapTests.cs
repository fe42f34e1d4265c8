using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Cloths;

public class ClothMapTests
{
    private static readonly ClothMap Map = new(
    [
        ZoneOf("base", 2e-3, 0.5, 1e-10, 4e-10),
        ZoneOf("patch", 4e-3, 0.5, 2e-10, 2e-10, 0, Rectangle(0.1, 0, 0.2, 0.1)),
        ZoneOf("strip", 1e-3, 0.5, 8e-10, 2e-10, Math.PI / 2, Rectangle(0.15, 0.02, 0.3, 0.04)),
    ]);

    [Theory]
    [InlineData(0.05, 0.05, 0)]
    [InlineData(0.12, 0.03, 1)]
    [InlineData(0.17, 0.03, 2)]
    [InlineData(0.25, 0.03, 2)]
    [InlineData(0.17, 0.05, 1)]
    public void ZoneAt_OverlappingZones_IsTheLastNamed(double x, double y, int zone) => Map.ZoneAt(new(x, y)).ShouldBe(zone);

    [Fact]
    public void Resistance_AcrossZones_AddsTheirParts()
    {
        // 0.05 to 0.1 base, to 0.15 patch, to 0.3 strip (K across its axis along x), to 0.35 base.
        double expected = 0.05 / 2e-13 + 0.05 / 8e-13 + 0.15 / 2e-13 + 0.05 / 2e-13;

        Map.Resistance(new Point2(0.05, 0.03), new Point2(0.35, 0.03)).ShouldBe(expected, 1e-9 * expected);
        Map.Resistance(new Point2(0.35, 0.03), new Point2(0.05, 0.03)).ShouldBe(expected, 1e-9 * expected);
    }

    // The edge belongs to the patch, on all four sides of it, whichever way one goes.
    [Theory]
    [InlineData(0, false)]
    [InlineData(0.1, false)]
    [InlineData(0, true)]
    [InlineData(0.1, true)]
    public void Resistance_AlongTheEdgeOfAZone_AddsThePartsUpToItsCorner(double at, bool isUpright)
    {
        ClothMap map = new([ZoneOf("base", 2e-3, 0.5, 1e-10, 1e-10), ZoneOf("patch", 4e-3, 0.5, 2e-10, 2e-10, 0, Rectangle(0, 0, 0.1, 0.1))]);
        Point2 outside = isUpright ? new(at, -0.03) : new(-0.03, at), inside = isUpright ? new(at, 0.04) : new(0.04, at);
        double expected = 0.03 / 2e-13 + 0.04 / 8e-13;

        map.Resistance(outside, inside).ShouldBe(expected, 1e-9 * expected);
        map.Resistance(inside, outside).ShouldBe(expected, 1e-9 * expected);
    }

    [Fact]
    public void Resistance_Obliquely_TakesThePermeabilityAlongTheWay()
    {
        // n·K·n = 0.36 Kx + 0.64 Ky along (3, 4)/5.
        double expected = 0.05 / (2e-3 * (0.36e-10 + 2.56e-10));

        Map.Resistance(new Point2(0.5, 0.5), new Point2(0.53, 0.54)).ShouldBe(expected, 1e-12 * expected);
    }

    [Fact]
    public void Resistance_PartlyBesideTheZones_GoesOnLikeTheRest()
    {
        ClothMap patch = new([ZoneOf("patch", 4e-3, 0.5, 2e-10, 2e-10, 0, Rectangle(0, 0, 0.2, 0.1))]);

        double resistance = patch.Resistance(new Point2(0.15, 0.05), new Point2(0.25, 0.05));

        resistance.ShouldBe(0.1 / 8e-13, 1e-9 / 8e-13);
        Should.Throw<InvalidOperationException>(() => patch.Resistance(new Point2(0.3, 0), new Point2(0.4, 0)));
    }

    [Fact]
    public void At_PlacesOnASlantedEdge_AreInTheZone()
    {
        var cloth = new Permeability(1e-10, 1e-10, 1e-12, 0);
        var map = new ClothMap([new Zone("skin", new Ring([new(0, 0), new(0.6, 0), new(0.31, 0.39)]), 0.003, 0.5, cloth)]);

        for (int k = 0; k <= 100; k++)
        {
            double share = k / 100.0;
            map.At(new Point2(0.6 + share * (0.31 - 0.6), share * 0.39)).PoreHeight.ShouldBe(0.0015, 1e-15);
        }

        Should.Throw<InvalidOperationException>(() => map.At(new Point2(0.5, 0.2)));
    }

    [Fact]
    public void WeightAlong_OneTurnedZone_IsThatOfItsStencil()
    {
        ClothMap turned = new([ZoneOf("bias", 2e-3, 0.5, 4e-10, 1e-10, Math.PI / 4)]);

        // 45°: Kxx = Kyy = 2.5e-10, Kxy = 1.5e-10 m², so 1.5e-10 along the diagonal and the rest along the squares.
        turned.SlantedArms.ShouldBe([(1, 1)]);
        turned.WeightAlong(new(0, 0), new(0.01, 0.01), 1, 1).ShouldBe(3e-13, 1e-24);
        turned.WeightAlong(new(0, 0), new(0.01, 0), 1, 0).ShouldBe(2e-13, 1e-24);
        turned.WeightAlong(new(0, 0), new(0.01, 0.02), 1, 2).ShouldBe(0);
    }

    [Theory]
    [InlineData(4, 30, 1000, -50, 0)]
    [InlineData(4, 77, 0.3, 0, 0.4)]
    [InlineData(5, 10, 7, 135, -0.7)]
    public void WeightAlong_AcrossAnEdgeMidway_AddsUpToZonesInSeries(double ratio, double firstDegrees, double contrast, double secondDegrees, double edgeAngle)
    {
        // Whatever the stencils of the two zones, the ways over the edge pass n·K·n in series for a fall of pressure square to it: each of them with
        // half its length on either side.
        double nx = Math.Cos(edgeAngle), ny = Math.Sin(edgeAngle);
        Zone below = ZoneOf("below", 1, 0.5, ratio, 1, firstDegrees * Math.PI / 180);
        Ring beyond = new([At(0, -9), At(9, -9), At(9, 9), At(0, 9)]);
        ClothMap map = new([below, ZoneOf("beyond", 1, 0.5, ratio * contrast, contrast, secondDegrees * Math.PI / 180, beyond)]);
        double sum = 0;
        foreach ((int right, int up) in map.SlantedArms.Concat([(1, 0), (0, 1)]))
        {
            double along = right * nx + up * ny;
            sum += along * along * map.WeightAlong(new(-right / 2.0, -up / 2.0), new(right / 2.0, up / 2.0), right, up);
        }

        double first = map[0].ConductanceAlong(nx, ny), second = map[1].ConductanceAlong(nx, ny), expected = 2 / (1 / first + 1 / second);
        sum.ShouldBe(expected, 1e-10 * expected);

        Point2 At(double across, double along) => new(across * nx - along * ny, across * ny + along * nx);
    }

    [Fact]
    public void Map_PlacesThatMayBeBare_LetNothingPass()
    {
        ClothMap mesh = new([ZoneOf("mesh", 1e-3, 0.8, 4e-9, 1e-9, Math.PI / 6, Rectangle(0, 0, 0.2, 0.1))], new Region(Rectangle(0, 0, 0.4, 0.1), []));

        mesh.MayBeBare.ShouldBeTrue();
        mesh.At(new Point2(0.3, 0.05)).ShouldBe(default);
        mesh.WeightAlong(new(0.19, 0.05), new(0.21, 0.05), 1, 0).ShouldBe(0);
        mesh.WeightAlong(new(0.25, 0.05), new(0.26, 0.06), 1, 1).ShouldBe(0);
        mesh.Resistance(new Point2(0.19, 0.05), new Point2(0.21, 0.05)).ShouldBe(double.PositiveInfinity);
        // Beyond the region's own edge nothing is bare: the way goes on like the rest of it.
        mesh.WeightAlong(new(0.1, 0.099), new(0.11, 0.101), 1, 0).ShouldBeGreaterThan(0);
    }
}

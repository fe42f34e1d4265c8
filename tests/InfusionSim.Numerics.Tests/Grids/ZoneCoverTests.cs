using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Numerics.Tests.Grids;

public class ZoneCoverTests
{
    [Fact]
    public void AreaInside_HalfOfACell_IsHalf()
    {
        CutCellGrid cells = CutCellBuilder.Build(Shapes.Plain(0, 0, 4, 0, 4, 3, 0, 3), 1);

        double[] covered = ZoneCover.AreaInside(Shapes.Ring(1.5, -5, 9, -5, 9, 1.25, 1.5, 1.25), cells);

        covered.ShouldBe([0, 0.5, 1, 1, 0, 0.125, 0.25, 0.25, 0, 0, 0, 0], 1e-15);
    }

    [Fact]
    public void AreaInside_ZoneEqualToTheOutline_IsTheWholeArea() => RandomRegions.Cases.Sample(
        c =>
        {
            CutCellGrid cells = CutCellBuilder.Build(c.Region, c.CellSize);
            double[] covered = ZoneCover.AreaInside(c.Region.Outline, cells);
            for (int cell = 0; cell < covered.Length; cell++) covered[cell].ShouldBe(cells.Area[cell], 1e-12);
        },
        iter: 100);

    [Fact]
    public void AreaInside_TwoZonesThatShareTheRegion_AddUpToTheArea() => Gen.Select(RandomRegions.Cases, Gen.Double[-1, 1], Gen.Double[-0.5, 0.5]).Sample(
        (c, at, slope) =>
        {
            CutCellGrid cells = CutCellBuilder.Build(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift));
            Point2 low = new(at - 9 * slope, -9), high = new(at + 9 * slope, 9);
            double[] left = ZoneCover.AreaInside(new Ring([new(-20, -9), low, high, new(-20, 9)]), cells);
            double[] right = ZoneCover.AreaInside(new Ring([low, new(20, -9), new(20, 9), high]), cells);
            for (int cell = 0; cell < left.Length; cell++) (left[cell] + right[cell]).ShouldBe(cells.Area[cell], 1e-12);
        },
        iter: 100);

    [Fact]
    public void AreaInside_ZoneInsideTheRegion_KeepsItsArea() => RandomRegions.Cases.Sample(
        c =>
        {
            double room = new RegionLocator(new Region(c.Region.Outline, [])).DistanceToEdge(new(0, 0));
            Ring zone = Shapes.Polygon(new(0, 0), 0.9 * room, 17, 0.3);
            CutCellGrid cells = CutCellBuilder.Build(c.Region with { Cutouts = [] }, c.CellSize);
            ZoneCover.AreaInside(zone, cells).Sum().ShouldBe(zone.SignedArea, 1e-12);
        },
        iter: 100);

    [Fact]
    public void AreaInside_ZoneApart_IsNothing() =>
        ZoneCover.AreaInside(Shapes.Ring(5, 5, 6, 5, 6, 6), CutCellBuilder.Build(Shapes.Plain(0, 0, 4, 0, 4, 3), 1)).Sum().ShouldBe(0);
}

using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Tests.Grids;

namespace InfusionSim.Numerics.Tests.Geometry;

public class RegionFaultsTests
{
    private static readonly Ring Plate = Shapes.Ring(0, 0, 10, 0, 10, 10, 0, 10);

    [Fact]
    public void Find_PlateWithTwoHoles_FindsNothing() =>
        RegionFaults.Find(new Region(Plate, [Shapes.Ring(1, 1, 3, 1, 3, 3, 1, 3), Shapes.Polygon(new(7, 7), 2, 24)])).ShouldBeEmpty();

    [Fact]
    public void Find_PointsRepeatedInARow_FindsNothing() =>
        RegionFaults.Find(Shapes.Plain(0, 0, 0, 0, 1, 0, 1, 1, 1, 1, 0, 0)).ShouldBeEmpty();

    [Fact]
    public void Find_RandomRegion_FindsNothing() =>
        RandomRegions.Cases.Sample(c => RegionFaults.Find(c.Region).ShouldBeEmpty(), iter: 200);

    [Theory]
    [InlineData(RegionFaultKind.TooFewPoints, 0d, 0d)]
    [InlineData(RegionFaultKind.TooFewPoints, 0d, 0d, 1d, 1d, 0d, 0d, 1d, 1d)]
    [InlineData(RegionFaultKind.NoArea, 0d, 0d, 1d, 1d, 2d, 2d)]
    [InlineData(RegionFaultKind.NoArea, 0d, 0d, 3d, 0d, 1d, 0d, 2d, 0d)]
    [InlineData(RegionFaultKind.NotFinite, 0d, 0d, double.NaN, 1d, 2d, 2d)]
    [InlineData(RegionFaultKind.NotFinite, 0d, 0d, 1d, 1d, 2d, double.NegativeInfinity)]
    [InlineData(RegionFaultKind.CrossesItself, 0d, 0d, 2d, 2d, 2d, 0d, 0d, 2d)]
    [InlineData(RegionFaultKind.CrossesItself, 0d, 0d, 2d, 2d, 2d, 0d, 0d, 1d)]
    [InlineData(RegionFaultKind.CrossesItself, 0d, 0d, 4d, 0d, 4d, 4d, 2d, 0d, 0d, 4d)]
    [InlineData(RegionFaultKind.CrossesItself, 0d, 0d, 4d, 0d, 4d, 4d, 4d, -1d)]
    public void Find_FaultyOutline_NamesTheFault(RegionFaultKind kind, params double[] numbers)
    {
        RegionFault fault = RegionFaults.Find(Shapes.Plain(numbers)).ShouldHaveSingleItem();

        fault.Kind.ShouldBe(kind);
        fault.RingIndex.ShouldBe(0);
    }

    [Fact]
    public void Find_FigureOfEight_NamesTheCrossing() =>
        RegionFaults.Find(Shapes.Plain(0, 0, 4, 2, 4, 0, 0, 2)).ShouldHaveSingleItem().Place.ShouldBe(new Point2(2, 1));

    [Theory]
    [InlineData(RegionFaultKind.CutoutOutside, 11d, 11d, 12d, 11d, 12d, 12d)]
    [InlineData(RegionFaultKind.CutoutMeetsOutline, 9d, 5d, 11d, 5d, 11d, 6d)]
    [InlineData(RegionFaultKind.CutoutMeetsOutline, 8d, 5d, 10d, 5d, 9d, 6d)]
    [InlineData(RegionFaultKind.CutoutMeetsOutline, 8d, 4d, 10d, 4d, 10d, 6d)]
    [InlineData(RegionFaultKind.CutoutsMeet, 2d, 2d, 5d, 2d, 5d, 5d)]
    [InlineData(RegionFaultKind.CutoutsMeet, 3d, 2d, 4d, 1d, 4d, 3d)]
    [InlineData(RegionFaultKind.CutoutsMeet, 1.5, 1.5, 2d, 1.5, 2d, 2d)]
    [InlineData(RegionFaultKind.CutoutsMeet, 0.5, 0.5, 5d, 0.5, 5d, 5d, 0.5, 5d)]
    [InlineData(RegionFaultKind.CrossesItself, 5d, 5d, 7d, 7d, 7d, 5d, 5d, 7.5)]
    [InlineData(RegionFaultKind.NoArea, 5d, 5d, 6d, 6d, 7d, 7d)]
    public void Find_FaultyCutout_NamesTheFault(RegionFaultKind kind, params double[] numbers)
    {
        IReadOnlyList<RegionFault> faults = RegionFaults.Find(new Region(Plate, [Shapes.Ring(1, 1, 3, 1, 3, 3, 1, 3), Shapes.Ring(numbers)]));

        RegionFault fault = faults.ShouldHaveSingleItem();
        fault.Kind.ShouldBe(kind);
        Math.Max(fault.RingIndex, fault.OtherRing).ShouldBe(2);
    }

    [Fact]
    public void Find_OutlineAroundAHoleOutside_NamesEveryFault()
    {
        IReadOnlyList<RegionFault> faults = RegionFaults.Find(new Region(
            Shapes.Ring(0, 0, 1, 0, 1, 1, 0, 1), [Shapes.Ring(5, 5, 6, 5, 6, 6), Shapes.Ring(0.5, 0.5, 2, 0.5, 0.5, 0.6), Shapes.Ring(0, 0)]));

        faults.Select(f => (f.Kind, f.RingIndex)).ShouldBe(
            [(RegionFaultKind.CutoutOutside, 1), (RegionFaultKind.CutoutMeetsOutline, 2), (RegionFaultKind.TooFewPoints, 3)]);
    }

    [Theory]
    [InlineData(1e300)]
    [InlineData(1e-300)]
    [InlineData(1)]
    public void Find_HugeOrTinyNumbers_AnswersTheSame(double unit)
    {
        Region sound = Shapes.Moved(new Region(Plate, [Shapes.Ring(1, 1, 3, 1, 3, 3)]), p => new(p.X * unit, p.Y * unit));
        Region crossed = Shapes.Moved(Shapes.Plain(0, 0, 2, 2, 2, 0, 0, 1), p => new(p.X * unit, p.Y * unit));

        RegionFaults.Find(sound).ShouldBeEmpty();
        RegionFaults.Find(crossed).ShouldHaveSingleItem().Kind.ShouldBe(RegionFaultKind.CrossesItself);
    }

    [Fact]
    public void Find_AnyNumbers_NeverThrows()
    {
        Gen<Ring> ring = Gen.Select(Gen.Double, Gen.Double, (x, y) => new Point2(x, y)).Array[0, 8].Select(corners => new Ring(corners));
        Gen<Ring> coarse = Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4], (x, y) => new Point2(x, y)).Array[0, 8].Select(corners => new Ring(corners));

        Gen.Select(Gen.OneOf(ring, coarse), Gen.OneOf(ring, coarse).Array[0, 3], (outline, cutouts) => new Region(outline, cutouts))
            .Sample(region => RegionFaults.Find(region).ShouldAllBe(f => f.RingIndex >= 0 && f.RingIndex <= region.Cutouts.Count), iter: 3000);
    }

    [Fact]
    public void Find_NothingFound_MeansTheRegionCanBeCut()
    {
        // Corners on a 5 × 5 raster under a grid of the same raster: edges along grid lines, corners on corners, thin wedges.
        Gen<Ring> coarse = Gen.Select(Gen.Int[0, 4], Gen.Int[0, 4], (x, y) => new Point2(x, y)).Array[3, 8].Select(corners => new Ring(corners));
        int cut = 0;

        Gen.Select(coarse, Gen.Int[0, 3].Select(k => new[] { 0.5, 1, 1.0 / 3, 0.7 }[k])).Sample(
            (outline, cellSize) =>
            {
                var region = new Region(outline, []);
                if (RegionFaults.Find(region).Count > 0) return;
                Interlocked.Increment(ref cut);
                var cells = InfusionSim.Numerics.Grids.CutCellBuilder.Build(region, cellSize);
                cells.Area.Sum().ShouldBe(Math.Abs(outline.SignedArea), 1e-12);
                cells.EdgePieces.Sum(p => p.Length).ShouldBe(Shapes.PerimeterOf(region), 1e-12);
                CutCellChecks.HoldsTogether(cells);
            },
            iter: 5000);
        cut.ShouldBeGreaterThan(100);
    }
}

using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Numerics.Tests.Grids;

public class CellFinderTests
{
    [Fact]
    public void OwnerAt_BothSidesOfASlit_AreDifferentCells()
    {
        CutCellGrid cells = CutCellBuilder.Build(Shapes.Plain(0, 0, 10, 0, 10, 4.4, 3.3, 4.4, 3.3, 4.7, 10, 4.7, 10, 9, 0, 9), 1);
        var finder = new CellFinder(cells);

        finder.OwnerAt(new(6.5, 4.2)).ShouldBe(cells.Grid.IndexOf(6, 4));
        finder.OwnerAt(new(6.5, 4.55)).ShouldBe(-1);
        finder.OwnerAt(new(6.5, 4.9)).ShouldBe(cells.Grid.IndexOf(6, 5));
        finder.OwnerAt(new(6.5, 4.4)).ShouldBe(cells.Grid.IndexOf(6, 4));
        finder.OwnerAt(new(6.5, 4.7)).ShouldBe(cells.Grid.IndexOf(6, 5));
    }

    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(4, 3, 11)]
    [InlineData(4, 1.5, 7)]
    [InlineData(4.001, 1.5, -1)]
    [InlineData(-0.001, 1.5, -1)]
    [InlineData(double.NaN, 1, -1)]
    [InlineData(1e300, 1, -1)]
    public void OwnerAt_EdgeOfAPlate_BelongsToTheCloth(double x, double y, int owner) =>
        new CellFinder(CutCellBuilder.Build(Shapes.Plain(0, 0, 4, 0, 4, 3, 0, 3), 1)).OwnerAt(new(x, y)).ShouldBe(owner);

    [Fact]
    public void OwnerAt_RandomPlaces_IsInsideExactlyWhereTheRegionIs() => Gen.Select(RandomRegions.Cases, Gen.Double[-1.1, 1.1].Array[40]).Sample(
        (c, numbers) =>
        {
            CutCellGrid cells = CutCellBuilder.Build(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift));
            var finder = new CellFinder(cells);
            var locator = new RegionLocator(c.Region);
            for (int k = 0; k < numbers.Length; k += 2)
            {
                var place = new Point2(numbers[k], numbers[k + 1]);
                if (locator.DistanceToEdge(place) < 1e-8) continue;
                int owner = finder.OwnerAt(place);
                (owner >= 0).ShouldBe(locator.Contains(place));
                if (owner >= 0) cells.HasCloth(owner).ShouldBeTrue();
            }
        },
        iter: 100);

    [Fact]
    public void OwnerAt_MiddleOfEveryEdgePiece_IsItsCell() => RandomRegions.Cases.Sample(
        c =>
        {
            CutCellGrid cells = CutCellBuilder.Build(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift));
            var finder = new CellFinder(cells);
            foreach (EdgePiece piece in cells.EdgePieces.Where(p => p.Length > 1e-6))
            {
                finder.OwnerAt(new((piece.Start.X + piece.End.X) / 2, (piece.Start.Y + piece.End.Y) / 2)).ShouldBe(piece.Cell);
            }
        },
        iter: 100);
}

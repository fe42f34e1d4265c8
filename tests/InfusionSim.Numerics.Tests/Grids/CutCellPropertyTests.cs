using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Grids.Cutting;

namespace InfusionSim.Numerics.Tests.Grids;

public class CutCellPropertyTests
{
    private const int Panels = 200;

    [Fact]
    public void Build_RandomRegion_KeepsAreaPerimeterAndFirstMoments() => RandomRegions.Cases.Sample(
        c =>
        {
            CutCellGrid cells = CutCellBuilder.Build(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift));
            double area = Shapes.AreaOf(c.Region), perimeter = Shapes.PerimeterOf(c.Region);
            (double x, double y) = Shapes.MomentsOf(c.Region);
            cells.Area.Sum().ShouldBe(area, 1e-12 * area);
            cells.EdgePieces.Sum(p => p.Length).ShouldBe(perimeter, 1e-12 * perimeter);
            cells.Area.Zip(cells.CentroidX, (a, m) => a * m).Sum().ShouldBe(x, 1e-12);
            cells.Area.Zip(cells.CentroidY, (a, m) => a * m).Sum().ShouldBe(y, 1e-12);
        },
        iter: Panels);

    [Fact]
    public void Build_RandomRegion_HoldsTogether() => RandomRegions.Cases.Sample(
        c => CutCellChecks.HoldsTogether(CutCellBuilder.Build(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift))),
        iter: Panels);

    [Fact]
    public void Cut_RandomRegion_ClosesTheBorderOfEveryPart() => RandomRegions.Cases.Sample(
        c =>
        {
            UniformGrid grid = CutCellBuilder.GridOver(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift));
            CutCellChecks.LargestOpenBorder(new CutSquares(c.Region, grid)).ShouldBeLessThan(1e-12);
        },
        iter: Panels);

    [Fact]
    public void Build_RandomRegion_ClosesTheBorderOfEveryCellFarFromMergers() => RandomRegions.Cases.Sample(
        c =>
        {
            CutCellGrid cells = CutCellBuilder.Build(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift));
            CutCellChecks.LargestOpenBorder(cells).ShouldBeLessThan(1e-12);
        },
        iter: Panels);

    [Fact]
    public void Build_RandomRegion_OpensNoFaceBeyondItsLengthWhereNothingMerged() => RandomRegions.Cases.Sample(
        c =>
        {
            CutCellGrid cells = CutCellBuilder.Build(c.Region, c.CellSize, RandomRegions.OriginOf(c.Region, c.CellSize, c.Shift));
            HashSet<int> touched = CutCellChecks.TouchedByMergers(cells);
            for (int cell = 0; cell < cells.Grid.CellCount; cell++)
            {
                if (touched.Contains(cell)) continue;
                cells.EastAperture[cell].ShouldBeInRange(0, c.CellSize * (1 + 1e-12));
                cells.NorthAperture[cell].ShouldBeInRange(0, c.CellSize * (1 + 1e-12));
                cells.Area[cell].ShouldBeLessThanOrEqualTo(c.CellSize * c.CellSize * (1 + 1e-12));
            }
        },
        iter: Panels);

    [Fact]
    public void Build_MirroredRegion_MirrorsTheCells() => RandomRegions.Cases.Sample(
        c => Compare(c.Region, c.CellSize, c.Shift, p => new Point2(-p.X, p.Y), (column, row, columns, _) => (columns - 1 - column, row)),
        iter: Panels);

    [Fact]
    public void Build_RegionTurnedByAQuarter_TurnsTheCells() => RandomRegions.Cases.Sample(
        c => Compare(c.Region, c.CellSize, c.Shift, p => new Point2(-p.Y, p.X), (column, row, _, rows) => (rows - 1 - row, column)),
        iter: Panels);

    private static void Compare(Region region, double cellSize, Point2 shift, Func<Point2, Point2> rule, Func<int, int, int, int, (int Column, int Row)> move)
    {
        CutCellGrid before = CutCellBuilder.Build(region, cellSize, RandomRegions.OriginOf(region, cellSize, shift));
        UniformGrid grid = before.Grid;
        Point2 oneCorner = rule(grid.Origin), otherCorner = rule(new(grid.Origin.X + grid.Columns * cellSize, grid.Origin.Y + grid.Rows * cellSize));
        var origin = new Point2(Math.Min(oneCorner.X, otherCorner.X), Math.Min(oneCorner.Y, otherCorner.Y));
        CutCellGrid after = CutCellBuilder.Build(Shapes.Moved(region, rule), cellSize, origin);

        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            int moved = Image(cell);
            after.Area[moved].ShouldBe(before.Area[cell], 1e-12);
            after.OwnerOf[moved].ShouldBe(before.OwnerOf[cell] < 0 ? -1 : Image(before.OwnerOf[cell]));
            if (before.Area[cell] > 0) after.CentroidOf(moved).DistanceTo(rule(before.CentroidOf(cell))).ShouldBeLessThan(1e-10);
            Face(cell, before.EastAperture[cell], cell + 1);
            Face(cell, before.NorthAperture[cell], cell + grid.Columns);
        }

        int Image(int cell)
        {
            (int column, int row) = move(grid.ColumnOf(cell), grid.RowOf(cell), grid.Columns, grid.Rows);
            return after.Grid.IndexOf(column, row);
        }

        void Face(int cell, double aperture, int neighbour)
        {
            if (aperture == 0) return;
            int one = Image(cell), other = Image(neighbour), low = Math.Min(one, other);
            (after.Grid.RowOf(one) == after.Grid.RowOf(other) ? after.EastAperture : after.NorthAperture)[low].ShouldBe(aperture, 1e-12);
        }
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Numerics.Tests.Grids;

public class CutCellBuilderTests
{
    [Fact]
    public void Build_RectangleOfWholeSquares_HasNoCutCellAndIsExact()
    {
        CutCellGrid cells = CutCellBuilder.Build(Shapes.Plain(0.1, 0.2, 0.7, 0.2, 0.7, 0.6, 0.1, 0.6), 0.005);

        cells.Grid.Columns.ShouldBe(120);
        cells.Grid.Rows.ShouldBe(80);
        cells.CutParts.ShouldBeEmpty();
        cells.Area.ShouldAllBe(a => a == 0.005 * 0.005);
        for (int cell = 0; cell < cells.Grid.CellCount; cell++)
        {
            cells.CentroidOf(cell).ShouldBe(cells.Grid.CentreOf(cell));
            cells.OwnerOf[cell].ShouldBe(cell);
            cells.EastAperture[cell].ShouldBe(cells.Grid.ColumnOf(cell) == 119 ? 0 : 0.005);
            cells.NorthAperture[cell].ShouldBe(cells.Grid.RowOf(cell) == 79 ? 0 : 0.005);
        }

        cells.EdgePieces.Count.ShouldBe(2 * (120 + 80));
        foreach (EdgePiece piece in cells.EdgePieces)
        {
            var middle = new Point2((piece.Start.X + piece.End.X) / 2, (piece.Start.Y + piece.End.Y) / 2);
            middle.DistanceTo(cells.CentroidOf(piece.Cell)).ShouldBe(0.0025, 1e-12);
        }
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.37, 0)]
    [InlineData(0.37, 0.61)]
    [InlineData(0.5, 0.5)]
    public void Build_DiscWithHole_KeepsAreaCentroidAndPerimeter(double shiftX, double shiftY)
    {
        var region = new Region(Shapes.Polygon(new(0.3, 0.2), 0.25, 720, 0.1), [Shapes.Polygon(new(0.35, 0.2), 0.05, 90)]);
        var origin = new Point2(0.05 - shiftX * 0.005 - 1e-6, -0.05 - shiftY * 0.005 - 1e-6);

        CutCellGrid cells = CutCellBuilder.Build(region, 0.005, origin);

        // Regular polygon with n corners: n/2 R² sin(2π/n), side 2R sin(π/n).
        double disc = 360 * 0.25 * 0.25 * Math.Sin(2 * Math.PI / 720), hole = 45 * 0.05 * 0.05 * Math.Sin(2 * Math.PI / 90);
        double perimeter = 1440 * 0.25 * Math.Sin(Math.PI / 720) + 180 * 0.05 * Math.Sin(Math.PI / 90);
        cells.Area.Sum().ShouldBe(disc - hole, 1e-12 * disc);
        cells.EdgePieces.Sum(p => p.Length).ShouldBe(perimeter, 1e-12 * perimeter);
        double momentX = 0, momentY = 0;
        for (int k = 0; k < cells.Area.Length; k++)
        {
            momentX += cells.Area[k] * cells.CentroidX[k];
            momentY += cells.Area[k] * cells.CentroidY[k];
        }

        (momentX / (disc - hole)).ShouldBe((0.3 * disc - 0.35 * hole) / (disc - hole), 1e-12);
        (momentY / (disc - hole)).ShouldBe(0.2, 1e-12);
        CutCellChecks.HoldsTogether(cells);
    }

    [Theory]
    [InlineData(17)]
    [InlineData(45)]
    [InlineData(0.01)]
    [InlineData(89.99)]
    public void Build_TurnedRectangle_KeepsAreaAndPerimeter(double degrees)
    {
        var region = new Region(Shapes.Rectangle(new(0.5, 0.4), 0.6, 0.4, degrees * Math.PI / 180), []);

        CutCellGrid cells = CutCellBuilder.Build(region, 0.01);

        cells.Area.Sum().ShouldBe(0.24, 0.24e-12);
        cells.EdgePieces.Sum(p => p.Length).ShouldBe(2, 2e-12);
        CutCellChecks.HoldsTogether(cells);
    }

    [Fact]
    public void Build_EitherWayRound_GivesTheSameCells()
    {
        var outline = Shapes.Polygon(new(0, 0), 0.2, 31);
        var cutout = Shapes.Polygon(new(0.03, 0.02), 0.04, 11);

        CutCellGrid one = CutCellBuilder.Build(new Region(outline, [cutout]), 0.01);
        CutCellGrid other = CutCellBuilder.Build(new Region(Shapes.Backwards(outline), [Shapes.Backwards(cutout)]), 0.01);

        other.Area.Zip(one.Area).ShouldAllBe(pair => Math.Abs(pair.First - pair.Second) < 1e-18);
        other.EastAperture.Zip(one.EastAperture).ShouldAllBe(pair => Math.Abs(pair.First - pair.Second) < 1e-15);
        other.EdgePieces.Count.ShouldBe(one.EdgePieces.Count);
    }

    [Fact]
    public void Build_SlitThinnerThanACell_StaysTight()
    {
        // A slit 0.3 squares wide from the right edge, off the grid lines: nothing may pass from one side to the other.
        CutCellGrid cells = CutCellBuilder.Build(Shapes.Plain(0, 0, 10, 0, 10, 4.4, 3.3, 4.4, 3.3, 4.7, 10, 4.7, 10, 9, 0, 9), 1);

        cells.Area.Sum().ShouldBe(90 - 0.3 * 6.7, 1e-12);
        for (int column = 4; column < 10; column++)
        {
            // The lower 0.4 keeps its square; the upper 0.3 joins the square above it.
            int square = cells.Grid.IndexOf(column, 4), above = square + 10;
            cells.OwnerOf[square].ShouldBe(square);
            cells.Area[square].ShouldBe(0.4, 1e-12);
            cells.NorthAperture[square].ShouldBe(0);
            cells.Area[above].ShouldBe(1.3, 1e-12);
            cells.CentroidY[above].ShouldBe((5.5 + 0.3 * 4.85) / 1.3, 1e-12);
            if (column < 9) cells.EastAperture[above].ShouldBe(1.3, 1e-12);
        }

        CutCellChecks.HoldsTogether(cells);
    }

    [Fact]
    public void Build_EdgeOnGridLines_BelongsToTheSideOfTheRegion()
    {
        // A square hole on grid lines inside a square: all cells whole or empty.
        CutCellGrid cells = CutCellBuilder.Build(new Region(Shapes.Ring(0, 0, 6, 0, 6, 6, 0, 6), [Shapes.Ring(2, 2, 4, 2, 4, 4, 2, 4)]), 1);

        cells.CutParts.ShouldBeEmpty();
        cells.OwnerOf.Count(o => o < 0).ShouldBe(4);
        cells.Area.Sum().ShouldBe(32);
        cells.EastAperture[cells.Grid.IndexOf(1, 2)].ShouldBe(0);
        cells.EastAperture[cells.Grid.IndexOf(2, 2)].ShouldBe(0);
        cells.EdgePieces.ShouldAllBe(p => cells.Area[p.Cell] == 1);
        cells.EdgePieces.Where(p => p.RingIndex == 1).Count().ShouldBe(8);
    }

    [Fact]
    public void Build_SliversAlongAnEdge_JoinTheCellsBelowAndKeepTheirOpenFaces()
    {
        CutCellGrid cells = CutCellBuilder.Build(Shapes.Plain(0, 0, 5, 0, 5, 2.001, 0, 2.001), 1);

        cells.Grid.Rows.ShouldBe(3);
        for (int column = 0; column < 5; column++)
        {
            int host = cells.Grid.IndexOf(column, 1);
            cells.OwnerOf[host + 5].ShouldBe(host);
            cells.Area[host + 5].ShouldBe(0);
            cells.Area[host].ShouldBe(1.001, 1e-12);
            cells.CentroidY[host].ShouldBe((1.5 + 0.001 * 2.0005) / 1.001, 1e-12);
            if (column < 4) cells.EastAperture[host].ShouldBe(1.001, 1e-12);
        }

        CutCellChecks.HoldsTogether(cells);
    }

    [Fact]
    public void Build_ThinNeckThroughGridCorners_StaysOpen()
    {
        // Two plates joined by a band 0.06 squares wide at 45° through the corners of the grid: the triangles beside the corners are slivers, yet the
        // only way through.
        double w = 0.03 * Math.Sqrt(2);
        CutCellGrid cells = CutCellBuilder.Build(
            Shapes.Plain(0, 0, 3, 0, 3, 3 - w, 6, 6 - w, 9, 6 - w, 9, 9, 6 - w, 9, 6 - w, 6, 3 - w, 3, 0, 3), 1);

        CutCellChecks.HoldsTogether(cells);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void Build_CornerThatTouchesAGridLine_PartsTheSquareWhereverTheOutlineBegins(int first)
    {
        Point2[] corners = [new(0, 0), new(2.3, 0), new(2, 0.4), new(2.6, 1), new(2.6, 2), new(0, 2)];
        CutCellGrid cells = CutCellBuilder.Build(new Region(new Ring([.. corners[first..], .. corners[..first]]), []), 1);

        cells.CutParts.Count(part => part.Square == 2).ShouldBe(2);
        cells.Area[2].ShouldBe(0.18, 1e-12, "the larger triangle");
        cells.Area[1].ShouldBe(1.06, 1e-12, "a square and the smaller triangle");
    }

    [Fact]
    public void Build_SliversOfAnEdgeAt45Degrees_GoToTheSameHostsWhenXAndYAreExchanged()
    {
        Point2[] corners = [new(0, 0), new(6, 0), new(6, 2.03), new(3.03, 5), new(0, 5)];
        CutCellGrid cells = CutCellBuilder.Build(new Region(new Ring(corners), []), 1);
        CutCellGrid twin = CutCellBuilder.Build(new Region(new Ring([.. corners.Select(static corner => new Point2(corner.Y, corner.X))]), []), 1);

        cells.OwnerOf.Where((owner, square) => owner >= 0 && owner != square).ShouldNotBeEmpty();
        for (int square = 0; square < cells.OwnerOf.Length; square++)
            twin.OwnerOf[Twin(square)].ShouldBe(cells.OwnerOf[square] < 0 ? -1 : Twin(cells.OwnerOf[square]), $"square {square}");

        int Twin(int square) => cells.Grid.ColumnOf(square) * twin.Grid.Columns + cells.Grid.RowOf(square);
    }

    [Fact]
    public void Build_RegionSmallerThanASquare_IsOneCell()
    {
        CutCellGrid cells = CutCellBuilder.Build(new Region(Shapes.Polygon(new(0, 0), 0.4, 12), [Shapes.Polygon(new(0.1, 0), 0.1, 6)]), 1, new(-0.5, -0.5));

        cells.Grid.CellCount.ShouldBe(1);
        cells.Area[0].ShouldBe(6 * 0.16 * Math.Sin(Math.PI / 6) - 3 * 0.01 * Math.Sin(Math.PI / 3), 1e-14);
        cells.EdgePieces.ShouldAllBe(p => p.Cell == 0);
    }

    [Fact]
    public void Build_StripThinnerThanTheSmallestShare_StaysConnected()
    {
        CutCellGrid cells = CutCellBuilder.Build(new Region(Shapes.Rectangle(new(0, 0), 20, 0.01, 0.3), []), 1);

        cells.Area.Sum().ShouldBe(0.2, 1e-12);
        CutCellChecks.HoldsTogether(cells);
    }

    [Theory]
    [InlineData(double.NaN, 1)]
    [InlineData(1, double.NaN)]
    [InlineData(1, 0)]
    [InlineData(1, -1)]
    [InlineData(1, double.PositiveInfinity)]
    [InlineData(1, 1e-9)]
    public void Build_NonsenseNumbers_IsRefused(double corner, double cellSize) =>
        Should.Throw<ArgumentException>(() => CutCellBuilder.Build(Shapes.Plain(0, 0, corner, 0, 1, 1), cellSize));

    [Fact]
    public void Build_OriginInsideTheRegion_IsRefused() =>
        Should.Throw<ArgumentException>(() => CutCellBuilder.Build(Shapes.Plain(0, 0, 1, 0, 1, 1), 0.1, new Point2(0.1, 0)));
}

using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Numerics.Tests.Grids;

public class EdgeFinderTests
{
    private static readonly Region Plate = new(
        new Ring([new(0, 0), new(1, 0.1), new(0.9, 1), new(0.1, 0.8)]), [new Ring([new(0.4, 0.4), new(0.6, 0.45), new(0.5, 0.6)])]);

    [Fact]
    public void Meets_AnyWay_AgreesWithALookAtEveryEdge()
    {
        CutCellGrid cells = CutCellBuilder.Build(Plate, 0.07);
        EdgeFinder finder = new(cells);
        RegionLocator locator = new(Plate);
        Gen.Double[0.05, 0.95].Array[4].Sample(
            ends =>
            {
                Point2 from = new(ends[0], ends[1]), to = new(ends[2], ends[3]);
                bool leaves = Enumerable.Range(0, 401).Any(k => locator.Contains(At(from, to, k / 400.0)) != locator.Contains(from));
                // A look at 400 places misses what a way cuts off a corner; it never sees an edge that is not there.
                if (leaves) finder.Meets(from, to).ShouldBeTrue();
                if (finder.First(from, to) is [EdgeHit hit, ..])
                {
                    locator.DistanceToEdge(At(from, to, hit.Share)).ShouldBeLessThan(1e-9);
                    if (hit.Share > 0.01) finder.Meets(from, At(from, to, hit.Share - 0.005)).ShouldBeFalse();
                }
                else
                {
                    finder.Meets(from, to).ShouldBeFalse();
                    leaves.ShouldBeFalse();
                }
            },
            iter: 2000);
    }

    [Fact]
    public void First_WayIntoACorner_NamesBothEdges()
    {
        CutCellGrid cells = CutCellBuilder.Build(new Region(new Ring([new(0, 0), new(1, 0), new(1, 1), new(0, 1)]), []), 0.1);

        IReadOnlyList<EdgeHit> hits = new EdgeFinder(cells).First(new(0.15, 0.15), new(-0.1, -0.1));

        hits.Count.ShouldBe(2);
        hits.ShouldAllBe(hit => Math.Abs(hit.Share - 0.6) < 1e-12);
    }

    [Fact]
    public void HasEdge_SquaresOfAPlate_AreThoseItsEdgesPassOrTouch()
    {
        CutCellGrid cells = CutCellBuilder.Build(
            new Region(new Ring([new(0, 0), new(1, 0), new(1, 1), new(0, 1)]), [new Ring([new(0.4, 0.4), new(0.5, 0.4), new(0.5, 0.5), new(0.4, 0.5)])]), 0.1);
        EdgeFinder finder = new(cells);

        for (int square = 0; square < 100; square++)
        {
            int column = square % 10, row = square / 10;
            bool outermost = column is 0 or 9 || row is 0 or 9, aboutHole = column is >= 3 and <= 5 && row is >= 3 and <= 5;
            finder.HasEdge(square).ShouldBe(outermost || aboutHole, $"square {column}, {row}");
        }
    }

    private static Point2 At(Point2 from, Point2 to, double share) => new(from.X + share * (to.X - from.X), from.Y + share * (to.Y - from.Y));
}

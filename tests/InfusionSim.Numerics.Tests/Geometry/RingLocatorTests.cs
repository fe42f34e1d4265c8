using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Tests.Grids;

namespace InfusionSim.Numerics.Tests.Geometry;

public class RingLocatorTests
{
    // A comb: two teeth with a gap from x = 2 to 4 above y = 1.
    private static readonly RingLocator Comb = new(Shapes.Ring(0, 0, 6, 0, 6, 3, 4, 3, 4, 1, 2, 1, 2, 3, 0, 3));

    [Fact]
    public void IntervalsInside_SegmentAcrossAGap_HasTwoStretches()
    {
        IReadOnlyList<ParameterInterval> inside = Comb.IntervalsInside(new(-2, 2), new(8, 2));

        inside.Count.ShouldBe(2);
        inside[0].From.ShouldBe(0.2, 1e-15);
        inside[0].To.ShouldBe(0.4, 1e-15);
        inside[1].From.ShouldBe(0.6, 1e-15);
        inside[1].To.ShouldBe(0.8, 1e-15);
    }

    [Theory]
    [InlineData(1, 1, 5, 1, 1)]
    [InlineData(3, 2, 3, 2.5, 0)]
    [InlineData(1, 0.5, 5, 0.5, 1)]
    [InlineData(1, 3, 5, 3, 0.5)]
    [InlineData(-1, -1, -2, 5, 0)]
    [InlineData(3, 0.5, 3, 1.5, 0.5)]
    [InlineData(1, 2, 1, 2, 1)]
    [InlineData(3, 2, 3, 2, 0)]
    public void ShareInside_Segment_IsItsLengthInside(double x1, double y1, double x2, double y2, double share) =>
        Comb.ShareInside(new(x1, y1), new(x2, y2)).ShouldBe(share, 1e-14);

    [Fact]
    public void ShareInside_RandomSegments_AgreesWithManyPoints() => Gen.Select(RandomRegions.Cases, Gen.Double[-1, 1].Array[4]).Sample(
        (c, ends) =>
        {
            var locator = new RingLocator(c.Region.Outline);
            Point2 from = new(ends[0], ends[1]), to = new(ends[2], ends[3]);
            const int Points = 2000;
            int inside = Enumerable.Range(0, Points).Count(k =>
                locator.Contains(new(from.X + (k + 0.5) / Points * (to.X - from.X), from.Y + (k + 0.5) / Points * (to.Y - from.Y))));
            // One point of error at each crossing; a star of at most 40 corners is crossed at most 40 times.
            locator.ShareInside(from, to).ShouldBe(inside / (double)Points, 40.0 / Points);
        },
        iter: 100);
}

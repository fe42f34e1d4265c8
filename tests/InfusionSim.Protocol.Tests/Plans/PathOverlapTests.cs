using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class PathOverlapTests
{
    private static LinePath Line(params (double X, double Y)[] points) => new([.. points.Select(point => new Point2(point.X, point.Y))]);

    [Fact]
    public void Find_LineThatRunsRoundAndCloses_FindsNothing() =>
        PathOverlap.Find(Line((0, 0), (1, 0), (1, 1), (0, 1), (0, 0))).ShouldBeNull();

    [Fact]
    public void Find_LineThatCrossesItself_FindsNothing() =>
        PathOverlap.Find(Line((0, 0), (1, 1), (1, 0), (0, 1))).ShouldBeNull();

    [Fact]
    public void Find_StraightLineOfManyPoints_FindsNothing() =>
        PathOverlap.Find(new LinePath([.. Enumerable.Range(0, 500).Select(k => new Point2(0, 0.001 * k))])).ShouldBeNull();

    [Fact]
    public void Find_LineThatTurnsBack_NamesTheMiddleOfWhatIsDrawnTwice() =>
        PathOverlap.Find(Line((0, 0), (1, 0), (0.5, 0)))!.Value.ShouldBe(new Point2(0.75, 0));

    [Fact]
    public void Find_LaterStretchOverAnEarlierOne_IsFound() =>
        PathOverlap.Find(Line((0, 0), (1, 0), (1, 1), (0.2, 1), (0.2, 0), (0.6, 0)))!.Value.X.ShouldBe(0.4, 1e-12);

    [Fact]
    public void Find_NarrowHairpin_FindsNothing() => PathOverlap.Find(Line((0, 0), (1, 0), (0, 0.001))).ShouldBeNull();

    [Fact]
    public void Find_TwentyThousandPoints_IsQuick()
    {
        var path = new LinePath([.. Enumerable.Range(0, 20_000).Select(k => new Point2(0.001 * k, k % 2))]);
        var clock = System.Diagnostics.Stopwatch.StartNew();

        PathOverlap.Find(path).ShouldBeNull();

        clock.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(2));
    }
}

using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Straight fills up and down a slope.</summary>
public sealed class SlopeTests
{
    private const string Source = "front with weight (Washburn 1921, from memory), derived";

    private static readonly GravityHead Head = GravityHead.Of(Reference.Resin, Reference.Bag);

    [Theory]
    [InlineData(90, 5391.43)]
    [InlineData(-90, 4667.21)]
    public void FillTime_UpAndDownAWall_ConvergesWithTheIntervals(double degrees, double expected)
    {
        int[] intervals = [25, 50, 100];
        AccuracyRecord[] records = [.. intervals.Select(count => RecordOf(degrees, 100, count, expected))];
        Convergence.PrintOrder($"strip at {degrees}°", [.. intervals.Select(count => 1.0 / count)], [.. records.Select(record => record.RelativeError)]);
        foreach (AccuracyRecord record in records) record.ShouldHold(5e-3);
    }

    private static AccuracyRecord RecordOf(double degrees, int cells, int intervals, double expected)
    {
        FillProblem problem = TiltedPanel.Of(Chain.Problem(Strip(1, cells, degrees)), Head);
        FillMap map = FillMap.Compute(problem, moments: intervals);
        Chain.State(map, map.FillClock);
        return new($"strip at {degrees}°, {intervals} intervals, fill time", Source, expected, map.FillClock / Reference.ClockRate, "s", Chain.GridOf(problem));
    }

    private static Panel Strip(double length, int cells, double degrees) => Chain.ReferencePanel(
        Shapes.Rectangle(length, length / cells), length / cells, new LinePath([new(0, 0), new(0, length / cells)]), new LinePath([new(length, 0), new(length, length / cells)])) with
    {
        Slope = degrees < 0 ? new Slope(Math.PI, -degrees * Math.PI / 180) : new Slope(0, degrees * Math.PI / 180),
    };
}

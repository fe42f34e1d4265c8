using CsCheck;
using InfusionSim.Plots.Contours;

namespace InfusionSim.Plots.Tests.Contours;

public class RoundTimesTests
{
    [Theory]
    [InlineData(1800, 300, 5)]
    [InlineData(1250, 180, 6)]
    [InlineData(90, 15, 5)]
    [InlineData(3600, 600, 5)]
    [InlineData(3601, 600, 5)]
    [InlineData(3720, 600, 6)]
    [InlineData(14400, 1800, 7)]
    public void Before_KnownEnd_ChoosesTheRoundStep(double endS, double stepS, int count)
    {
        var times = RoundTimes.Before(endS);

        times.Length.ShouldBe(count);
        times[0].ShouldBe(stepS, 1e-9);
    }

    [Fact]
    public void Before_AnyEnd_GivesFiveToNineTimesInEqualSteps() =>
        Gen.Double[1, 500_000].Sample(endS =>
        {
            var times = RoundTimes.Before(endS);
            times.Length.ShouldBeInRange(5, 9);
            times[^1].ShouldBeLessThan(endS);
            times.Zip(times.Skip(1)).ShouldAllBe(pair => Math.Abs(pair.Second - pair.First - times[0]) < 1e-9 * endS);
        });

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Before_NoEnd_GivesNone(double endS) => RoundTimes.Before(endS).ShouldBeEmpty();
}

using InfusionSim.Plots.Words;

namespace InfusionSim.Plots.Tests.Words;

public class TimeTextTests
{
    [Theory]
    [InlineData(0.34, "0.3 s")]
    [InlineData(53.6, "54 s")]
    [InlineData(60, "1 min")]
    [InlineData(90, "90 s")]
    [InlineData(450, "7 min 30 s")]
    [InlineData(1800, "30 min")]
    [InlineData(7200, "120 min")]
    [InlineData(10800, "3 h")]
    [InlineData(12000, "3 h 20 min")]
    public void Of_Time_ReadsAsALaminatorSaysIt(double seconds, string expected) => TimeText.Of(seconds).ShouldBe(expected);

    [Theory]
    [InlineData(1200, 2700, "20 to 45 min")]
    [InlineData(60, 135, "1 min to 2 min 15 s")]
    [InlineData(90, 200, "90 s to 3 min 20 s")]
    [InlineData(30, 50, "30 to 50 s")]
    public void Range_TwoTimes_NamesTheUnitOnce(double from, double to, string expected) => TimeText.Range(from, to).ShouldBe(expected);

    internal static string Text(double seconds) => TimeText.Of(seconds);
}

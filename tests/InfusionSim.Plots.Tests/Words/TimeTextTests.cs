using InfusionSim.Plots.Words;

namespace InfusionSim.Plots.Tests.Words;

public class TimeTextTests
{
    [Theory]
    [InlineData(0.5, "0.5 s")]
    [InlineData(45, "45 s")]
    [InlineData(75, "75 s")]
    [InlineData(60, "1 min")]
    [InlineData(90, "1.5 min")]
    [InlineData(225, "3 min 45 s")]
    [InlineData(1800, "30 min")]
    [InlineData(5400, "90 min")]
    [InlineData(7200, "2 h")]
    [InlineData(10800, "3 h")]
    [InlineData(12000, "3 h 20 min")]
    public void Of_RoundTime_IsExact(double seconds, string expected) => TimeText.Of(seconds).ShouldBe(expected);

    internal static string Text(double seconds) => TimeText.Of(seconds);
}

using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class AmountsTests
{
    [Theory]
    [InlineData(0, "0 s")]
    [InlineData(45, "45 s")]
    [InlineData(59.6, "1 min")]
    [InlineData(450, "7.5 min")]
    [InlineData(598, "10 min")]
    [InlineData(1800, "30 min")]
    [InlineData(7170, "2 h")]
    [InlineData(7800, "2 h 10 min")]
    public void Time_AnyLength_IsSaidShort(double seconds, string said) => Amounts.Time(seconds).ShouldBe(said);

    [Theory]
    [InlineData(1200, 2700, "20 to 45 min")]
    [InlineData(10, 20, "10 to 20 s")]
    [InlineData(50, 600, "50 s to 10 min")]
    [InlineData(6000, 8000, "100 min to 2 h 13 min")]
    public void TimeRange_TwoTimes_SaysTheUnitOnceWhereItIsTheSame(double from, double to, string said) => Amounts.TimeRange(from, to).ShouldBe(said);

    [Theory]
    [InlineData(40, "40 mm²")]
    [InlineData(100, "1 cm²")]
    [InlineData(1234, "12 cm²")]
    [InlineData(120_000, "0.12 m²")]
    public void Area_AnySize_IsSaidInAUnitThatFits(double mm2, string said) => Amounts.Area(mm2).ShouldBe(said);

    [Theory]
    [InlineData(0, "0 g")]
    [InlineData(1e-9, "0 g")]
    [InlineData(6.6, "6.6 g")]
    [InlineData(396.4, "396 g")]
    [InlineData(12_400, "12.4 kg")]
    public void Weight_AnySize_IsSaidInAUnitThatFits(double grams, string said) => Amounts.Weight(grams).ShouldBe(said);

    [Theory]
    [InlineData(1, "100 %")]
    [InlineData(0.9994, "99.9 %")]
    [InlineData(0.963, "96.3 %")]
    [InlineData(0.714, "71 %")]
    [InlineData(0.004, "0.4 %")]
    public void Percent_NearlyFull_SaysAHundredOfAFullPanelOnly(double share, string said) => Amounts.Percent(share).ShouldBe(said);

    [Theory]
    [InlineData(0.3, "0.3")]
    [InlineData(1013.25, "1013.25")]
    [InlineData(1e-10, "1e-10")]
    [InlineData(-950, "-950")]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(double.NaN, "not a number")]
    public void Say_AnyNumber_WritesItAsPeopleDo(double value, string said) => Numbers.Say(value).ShouldBe(said);
}

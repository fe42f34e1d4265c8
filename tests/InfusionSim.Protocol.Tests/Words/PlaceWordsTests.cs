using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class PlaceWordsTests
{
    [Theory]
    [InlineData(2.5, 2.5, "the lower left corner")]
    [InlineData(597.5, 397.5, "the upper right corner")]
    [InlineData(597.5, 200, "the right edge, 200 mm up")]
    [InlineData(301, 399, "the upper edge, 300 mm right")]
    [InlineData(300, 200, "300 mm right, 200 mm up from the lower left")]
    public void Of_APlace_IsSaidAsSeenFromTheBagSide(double xMm, double yMm, string said) =>
        PlaceWords.Of(StraightStrip.At(xMm, yMm), StraightStrip.Plan()).ShouldBe(said);

    [Fact]
    public void Of_ADrawingAwayFromItsOrigin_CountsFromTheOutline() =>
        PlaceWords.Of(StraightStrip.At(1300, 5200), StraightStrip.With(plan =>
            plan.Preform.Outline = StraightStrip.RingOf((1000, 5000), (1600, 5000), (1600, 5400), (1000, 5400)))).ShouldBe("300 mm right, 200 mm up from the lower left");
}

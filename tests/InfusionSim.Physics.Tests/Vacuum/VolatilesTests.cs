using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Tests.Vacuum;

public class VolatilesTests
{
    private const double Room = 293.15;

    [Theory]
    [InlineData(VolatileKind.Styrene)]
    [InlineData(VolatileKind.Water)]
    public void BoilingPoint_AtItsVapourPressure_IsItsTemperature(VolatileKind kind)
    {
        AntoineEquation pure = new VolatileComponent(kind, 1).Pure;
        pure.BoilingPointAt(pure.PressureAt(Room)).ShouldBe(Room, 1e-9);
    }

    [Fact]
    public void BubblePressure_OfTwoComponents_IsTheSumOfTheirParts()
    {
        VolatileComponent styrene = new(VolatileKind.Styrene, 0.5), water = new(VolatileKind.Water, 0.02);
        var both = new Volatiles([styrene, water], Room);
        both.BubblePressure.ShouldBe(0.5 * 645.153 + 0.02 * 2331.36, 1e-2);
        new Volatiles([], Room).BubblePressure.ShouldBe(0);
    }

    [Fact]
    public void Extrapolation_BelowTheRangeOfTheFit_IsSaid()
    {
        new Volatiles([new(VolatileKind.Styrene, 0.5)], Room).IsExtrapolated.ShouldBeTrue();
        new Volatiles([new(VolatileKind.Styrene, 0.5)], 310).IsExtrapolated.ShouldBeFalse();
        new Volatiles([new(VolatileKind.Water, 0.5)], Room).IsExtrapolated.ShouldBeFalse();
    }

    [Fact]
    public void Antoine_WhereItHasNoAnswer_IsRefused()
    {
        AntoineEquation water = new VolatileComponent(VolatileKind.Water, 1).Pure;
        Should.Throw<ArgumentOutOfRangeException>(() => water.PressureAt(60));
        Should.Throw<ArgumentOutOfRangeException>(() => water.BoilingPointAt(0));
        Should.Throw<ArgumentOutOfRangeException>(() => water.BoilingPointAt(1e10));
    }
}

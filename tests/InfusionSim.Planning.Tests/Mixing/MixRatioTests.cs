using InfusionSim.Planning.Mixing;

namespace InfusionSim.Planning.Tests.Mixing;

public sealed class MixRatioTests
{
    [Fact]
    public void Mass_ThirtyPartsToAHundred_ShareOutAsWeighed()
    {
        WeighedOut weighed = MixRatio.OfMass(30).Weigh(1.3);

        weighed.Resin.ShouldBe(1, 1e-15);
        weighed.Hardener.ShouldBe(0.3, 1e-15);
        weighed.Mixed.ShouldBe(1.3, 1e-15);
    }

    // A litre of resin of 1150 kg/m³ and 0.4 l of hardener of 950 kg/m³ are 1150 g and 380 g.
    [Fact]
    public void Volume_FortyPartsToAHundred_WeighLessThanTheirVolume()
    {
        WeighedOut weighed = MixRatio.OfVolume(40, 1150, 950).Weigh(1.53);

        weighed.Resin.ShouldBe(1.15, 1e-15);
        weighed.Hardener.ShouldBe(0.38, 1e-15);
    }

    [Fact]
    public void Volume_EqualDensities_IsTheRatioByMass() =>
        MixRatio.OfVolume(25, 1100, 1100).HardenerPerResin.ShouldBe(MixRatio.OfMass(25).HardenerPerResin, 1e-15);

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    public void Ratio_WithoutHardener_IsRefused(double parts) =>
        Should.Throw<ArgumentOutOfRangeException>(() => MixRatio.OfMass(parts));
}

using InfusionSim.Physics.Forecasts;
using InfusionSim.Planning.Mixing;

namespace InfusionSim.Planning.Tests.Mixing;

public sealed class PotHeatTests
{
    private const double Shop = 298.15;

    private static MixInputs Known(Func<MixWishes, MixWishes>? wish = null) => SamplePanels.Bare with
    {
        Kinetics = SamplePanels.InventedEpoxy,
        ShopTemperature = Shop,
        MixToOpen = 300,
        Wishes = wish?.Invoke(SamplePanels.Bare.Wishes) ?? SamplePanels.Bare.Wishes,
    };

    // As deep as wide: a kilogram of 1100 kg/m³ stands 105 mm deep and wide; side and surface are 432.9 cm².
    [Fact]
    public void Cooling_OfAKilogramInStillAir_IsThatOfItsSideAndSurface()
    {
        double width = Math.Cbrt(4 / (Math.PI * 1100));

        StillAirCooling.Of(1, 1100).ShouldBe(10 * (Math.PI * width * width + Math.PI / 4 * width * width), 1e-12);
        StillAirCooling.Of(8, 1100).ShouldBe(4 * StillAirCooling.Of(1, 1100), 1e-12);
    }

    [Fact]
    public void Heat_OfAKilogram_RunsAwayWhenItIsLeftStandingButNotInTenMinutes()
    {
        PotHeat heat = PotHeat.Of(Known(wishes => wishes with { PotCooling = 0.6 }), 1, 600);

        (heat.LeftStanding - 273.15).ShouldBe(251.89, 0.1);
        heat.GelsLeftStanding.ShouldBe(2010, 1);
        heat.RunsAwayLeftStanding.ShouldBeTrue();
        heat.RunsAway.ShouldBeFalse();
        heat.Warmest.ShouldBeInRange(Shop, 313.15);
        heat.IsBearable.ShouldBeTrue();
    }

    [Fact]
    public void Heat_StayThatOutlastsThePeak_IsThePeak()
    {
        PotHeat heat = PotHeat.Of(Known(wishes => wishes with { PotCooling = 0.6 }), 1, 10_000);

        heat.Warmest.ShouldBe(heat.LeftStanding);
        heat.RunsAway.ShouldBeTrue();
        heat.IsBearable.ShouldBeFalse();
    }

    [Theory]
    [InlineData(0.1, 0.5)]
    [InlineData(0.5, 2)]
    [InlineData(2, 20)]
    public void Heat_OfALargerBatch_IsHigher(double smaller, double larger) =>
        PotHeat.Of(Known(), larger, 1200).Warmest.ShouldBeGreaterThan(PotHeat.Of(Known(), smaller, 1200).Warmest);

    // The strip needs half an hour, in which 396 g at once get far too warm.
    [Fact]
    public void Batches_WhereHeatIsKnown_AreTheFewestThatStayCool()
    {
        Forecast forecast = SamplePanels.Forecast(SamplePanels.Strip());
        PotPlan pot = SamplePanels.Sheet(SamplePanels.Strip(), forecast, Known()).Pots[0];

        pot.Pours.Count.ShouldBeGreaterThan(1);
        pot.Heat!.IsBearable.ShouldBeTrue();
        double oneFewer = pot.Mixed / (pot.Pours.Count - 1);
        SamplePanels.Sheet(SamplePanels.Strip(), forecast, Known(wishes => wishes with { LargestBatch = oneFewer })).Pots[0].Heat!.IsBearable.ShouldBeFalse();
    }

    [Fact]
    public void Batches_ThatAPersonSets_StayAndAreJudged()
    {
        PotPlan pot = SamplePanels.Sheet(
            SamplePanels.Strip(), SamplePanels.Forecast(SamplePanels.Strip()), Known(wishes => wishes with { LargestBatch = 1 })).Pots[0];

        pot.Pours.ShouldHaveSingleItem();
        pot.Heat!.IsBearable.ShouldBeFalse();
        pot.Heat.Stay.ShouldBe(300 + 1.5 * 1800, 1e-6);
    }

    [Fact]
    public void Heat_WithoutKinetics_IsRefused() =>
        Should.Throw<ArgumentException>(() => PotHeat.Of(SamplePanels.Bare, 1, 600));
}

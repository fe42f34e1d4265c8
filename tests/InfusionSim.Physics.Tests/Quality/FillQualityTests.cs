using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Quality;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Quality;

public class FillQualityTests
{
    private static readonly Bag Tight = new(1325, 101325);

    private static readonly Resin Slow = new(0.2, 3600, 360, 1100) { Wetting = new(0.035, Math.PI / 6) };

    [Fact]
    public void Of_Strip_LeavesTheSlowestAndTheFastestTwentiethOut()
    {
        FillQuality quality = Predict(Slow).Quality!;

        // K Δp/(φ μ x) at 0.95 and 0.05 of 0.5 m; the two squares at the feed tell no speed and move the fast end by two per cent of the length.
        quality.FrontSpeed!.From.ShouldBe(1e-4 / 0.475, 0.01 * 1e-4 / 0.475);
        quality.FrontSpeed.To.ShouldBe(1e-4 / 0.034, 0.05 * 1e-4 / 0.034);
    }

    [Fact]
    public void Of_OtherViscosity_HasOtherSpeedsAndTheSameCapillaryNumbers()
    {
        FillQuality thin = Predict(Slow with { Viscosity = new ConstantViscosity(0.1) }).Quality!, thick = Predict(Slow).Quality!;
        int cell = Array.FindLastIndex(thick.FrontSpeeds, double.IsFinite);

        // μ v = Δp / slope: what makes the front faster takes as much from the drag.
        thin.FrontSpeeds[cell].ShouldBe(2 * thick.FrontSpeeds[cell], 1e-9 * thick.FrontSpeeds[cell]);
        thin.CapillaryNumbers![cell].ShouldBe(thick.CapillaryNumbers![cell], 1e-9 * thick.CapillaryNumbers[cell]);
        thick.CapillaryNumbers[cell].ShouldBe(CapillaryNumber.Of(0.2, thick.FrontSpeeds[cell], Slow.Wetting!), 1e-9);
    }

    [Fact]
    public void Of_StripPartlyInThePublishedRange_TellsTheShareOnEitherSide()
    {
        FillQuality quality = Predict(Slow).Quality!;

        // Ca* = 0.2 · 1e-4/(x · 0.035 · cos 30°): above 1e-2 up to x = 0.066 m, above 1e-3 everywhere; 0.01 m at the feed tell nothing.
        quality.BelowPublished!.Value.ShouldBe(0);
        quality.AbovePublished!.Value.ShouldBe((0.066 - 0.01) / 0.49, 0.011);
    }

    [Fact]
    public void Of_ResinOfUnknownWetting_HasSpeedsAlone()
    {
        FillQuality quality = Predict(Slow with { Wetting = null }).Quality!;
        quality.FrontSpeed.ShouldNotBeNull();
        quality.CapillaryNumbers.ShouldBeNull();
        quality.CapillaryNumber.ShouldBeNull();
        quality.AbovePublished.ShouldBeNull();
    }

    [Fact]
    public void Of_ResinThatGelsHalfWay_HasNothingBeyond()
    {
        FillQuality quality = Predict(Slow with { Gel = new StatedGel(360 + 312.5) }).Quality!;
        quality.GelMargins.Count(double.IsNaN).ShouldBe(quality.GelMargins.Length / 2);
        quality.FrontSpeeds.Count(double.IsFinite).ShouldBeLessThanOrEqualTo(quality.FrontSpeeds.Length / 2);
        quality.SmallestGelMargin!.Value.ShouldBe(0, 0.03);
        quality.SmallestGelMarginAt!.Value.X.ShouldBe(0.25, 0.005);
    }

    [Fact]
    public void Of_ResinWithTimeToSpare_HasTheSmallestMarginWhereItFillsLast()
    {
        FillQuality quality = Predict(Slow).Quality!;

        // The middle of the last square is passed just before the end: 1 − 1250/3240.
        quality.SmallestGelMargin!.Value.ShouldBe(1 - 1250.0 / 3240, 0.01);
        quality.SmallestGelMarginAt!.Value.X.ShouldBe(0.4975, 1e-9);
    }

    private static Forecast Predict(Resin resin) => Forecaster.Predict(
        TestPanels.Strip(0.5, 0.02, 0.005, TestPanels.Cloth) with { Vents = [TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.02)))] },
        resin, Tight, new Goals(), 1.5);
}

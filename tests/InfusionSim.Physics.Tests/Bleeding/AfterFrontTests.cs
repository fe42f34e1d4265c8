using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Bleeding;

public class AfterFrontTests
{
    private static readonly Bag Tight = new(1325, 101325);

    // The same driving pressure with more air.
    private static readonly Bag Poor = new(5e3, 105e3);

    private static readonly Resin Slow = new(0.2, 3600, 360, 1100);

    // Full at 1250 s; K h W Δp/(μ L) = 1e-10 · 3e-3 · 0.02 · 1e5/(0.2 · 0.5) = 6e-9 m³/s.
    private const double Rate = 6e-9;

    [Fact]
    public void Of_StripWithTimeToSpare_ClampsWhenTheLastResinHasLeft()
    {
        AfterFront after = Predict(Strip(), Slow).AfterFront!;
        after.ClampTime.ShouldBe(1475, 1475e-3);
        after.LastResinOut!.Value.ShouldBe(after.ClampTime, 1e-9);
        after.LastResinOutFrom!.Value.ShouldBe(after.ClampTime / 1.5, 1e-9 * after.ClampTime);
        after.LastResinOutTo!.Value.ShouldBe(after.ClampTime * 1.5, 1e-9 * after.ClampTime);
        after.Stays.ShouldBe(0, 1e-9);
        after.StaysAt.ShouldBeNull();

        VentBleed bleed = after.Vents.ShouldHaveSingleItem()!;
        bleed.Rate.ShouldBe(Rate, 1e-6 * Rate);
        bleed.UntilClamped.ShouldBe(Rate * (after.ClampTime - 1250), 1e-6 * Rate * 225);
        bleed.UntilGel.ShouldBe(Rate * (3240 - 1250), 1e-6 * Rate * 1990);
        bleed.Planned.ShouldBe(bleed.UntilClamped, 1e-12);
    }

    [Fact]
    public void Of_ResinThatGelsSoonAfter_IsClampedBeforeGel()
    {
        AfterFront after = Predict(Strip(), Slow with { Gel = new StatedGel(360 + 1300) }).AfterFront!;
        after.LastResinOut.ShouldBeNull();
        after.ClampTime.ShouldBeInRange(1250, 1300);

        // In 50 s the resin of the last 10 mm leaves, two squares of the ten that filled last; nine tenths of that are waited for.
        after.Stays.ShouldBe(0.8, 1e-6);
        after.LeftWhenClamped.ShouldBeInRange(0.05, 0.2 + 1e-9);
        after.Vents[0]!.Points[^1].Time.ShouldBe(1300, 1e-9);
    }

    [Fact]
    public void Of_SlowEndOfTheBandBeyondGel_IsLeftOut()
    {
        AfterFront after = Predict(Strip(), Slow with { Gel = new StatedGel(360 + 1600) }).AfterFront!;
        after.LastResinOut.ShouldNotBeNull();
        after.LastResinOutFrom.ShouldNotBeNull();
        after.LastResinOutTo.ShouldBeNull();
    }

    [Fact]
    public void Of_ResinThatGelsFirst_TellsNothing() => Predict(Strip(), Slow with { Gel = new StatedGel(360 + 600) }).AfterFront.ShouldBeNull();

    // Two fields: between 0 and 400 mm air is cut off when the front covers the membrane at 100 mm, between 400 and 900 mm a strip fills to its own vent.
    [Fact]
    public void Of_TrappedAir_TellsWhatLeavesAndAdvisesNoWaiting()
    {
        Panel panel = TestPanels.Panel(
            TestPanels.Rectangle(0, 0, 0.9, 0.02),
            0.005,
            [TestPanels.Cloth],
            [TestPanels.Feed(Across(0)), TestPanels.Feed(Across(0.4))],
            TestPanels.Vent(Across(0.1), VentKind.Membrane),
            TestPanels.Vent(Across(0.9)));
        Forecast forecast = Predict(panel, Slow, Poor);
        forecast.Outcome.ShouldBe(Outcome.TrapsAir);
        AfterFront after = forecast.AfterFront!;

        after.AirStays.ShouldBeTrue();
        after.ClampTime.ShouldBe(forecast.EndTime);
        after.LastResinOut.ShouldBeNull();
        after.Vents[0].ShouldBeNull();
        VentBleed bleed = after.Vents[1]!;
        bleed.Rate.ShouldBe(Rate, 1e-6 * Rate);
        bleed.UntilClamped.ShouldBe(0);
        bleed.UntilGel.ShouldBe(Rate * (3240 - forecast.EndTime), 1e-6 * bleed.UntilGel);
        bleed.Planned.ShouldBe(bleed.BeforeEnd, 1e-15);
    }

    // A vent half way along the edge cuts off the far end. What it passes at rest is what the account of the resin says for the last part of the way there.
    [Fact]
    public void Flow_BesideTrappedAir_IsThatOfTheResinAccount()
    {
        Panel panel = TestPanels.Panel(
            TestPanels.Rectangle(0, 0, 0.4, 0.2), 0.01, [TestPanels.Cloth], [TestPanels.Feed(TestPanels.Path((0, 0), (0, 0.2)))], TestPanels.Vent(TestPanels.Path((0.2, 0))));
        Forecast forecast = Predict(panel, Slow, Poor);
        forecast.DrySpots.ShouldNotBeEmpty();
        double end = forecast.Map.Stretches[^1].End, before = forecast.Map.Stretches[^1].Start.Clock;
        double passed = forecast.Map.StateAt(end).ResinOut[0] - forecast.Map.StateAt(before).ResinOut[0];

        double expected = passed / (end - before) * forecast.Clock.RateAt(forecast.EndTime);
        forecast.Vents[0].ResinOutRate.ShouldBe(expected, 2e-3 * expected);
    }

    [Fact]
    public void Of_MembraneVent_PassesNothing() =>
        Predict(Strip() with { Vents = [TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.02)), VentKind.Membrane)] }, Slow).AfterFront.ShouldBeNull();

    [Fact]
    public void Of_PointsOverTime_AddUpToWhatLeavesUntilGel()
    {
        VentBleed bleed = Predict(Strip(), Slow).AfterFront!.Vents[0]!;
        bleed.Points[0].Volume.ShouldBe(0);
        bleed.Points[^1].Volume.ShouldBe(bleed.UntilGel, 1e-9 * bleed.UntilGel);
        bleed.Points.Select(static point => point.Volume).ShouldBe(bleed.Points.Select(static point => point.Volume).Order());
    }

    [Fact]
    public void Of_VentWithAHose_CountsWhatTheHoseHolds()
    {
        Panel panel = Strip() with { Vents = [Strip().Vents[0] with { Hose = new Hose(8e-3, 2) }] };
        VentBleed bleed = Predict(panel, Slow).AfterFront!.Vents[0]!;
        double hose = Math.PI * 16e-6 * 2;
        bleed.HoseVolume.ShouldBe(hose, 0.05 * hose);
        bleed.Planned.ShouldBe(bleed.BeforeEnd + bleed.UntilClamped + bleed.HoseVolume, 1e-12);
    }

    [Fact]
    public void ShutTimes_OfClampsThatOpenAgain_AreTheLast()
    {
        Forecast forecast = Predict(Strip(), Slow);
        Clamp clamp = new(1, [new(new AtTime(100), 0), new(new AtTime(200), 1), new(new WhenFull(), 0)]);
        VentShutting.Of(forecast).ShouldBe([null]);
        VentShutting.LastShut(clamp, forecast).ShouldBe(forecast.EndTime);
        VentShutting.LastShut(new(1, [new(new WhenReached("V"), 0)]), forecast).ShouldBe(forecast.Vents[0].ArrivalTime);
        VentShutting.LastShut(new(0, []), forecast).ShouldBe(0);
        VentShutting.LastShut(new(1, [new(new WhenReached("nowhere"), 0)]), forecast).ShouldBeNull();
    }

    private static Forecast Predict(Panel panel, Resin resin, Bag? bag = null) => Forecaster.Predict(panel, resin, bag ?? Tight, new Goals(), 1.5);

    private static LinePath Across(double x) => TestPanels.Path((x, 0), (x, 0.02));

    private static Panel Strip() => TestPanels.Strip(0.5, 0.02, 0.005, TestPanels.Cloth) with
    {
        Vents = [TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.02)))],
    };
}

using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Clamps;

public sealed class ClampedForecastTests
{
    private static readonly Resin Resin = new(0.2, 1e5, 0, 1100);

    [Fact]
    public void Vent_ReachedWithTheVeryEndAfterStepsOfTheVacuum_IsReached()
    {
        Bag bag = new(1325, 101325) { Steps = [new BagStep(new AtTime(300), 5e3), new BagStep(new AtTime(700), 2e3)] };
        Forecast forecast = Forecaster.Predict(ClampedStrip.Panel(0.01), Resin, bag, new Goals(), 1.5);
        forecast.Outcome.ShouldBe(Outcome.Fills);
        forecast.Vents[0].ArrivalTime.ShouldNotBeNull();
        forecast.ClampEvents.Count.ShouldBe(2);
    }

    [Fact]
    public void Pot_ThatHoldsHalf_RunsDryWhenThatIsDrawn()
    {
        // Half of the resin is in at a quarter of the fill time: the front runs with the root of time.
        double pores = ClampedStrip.Length * ClampedStrip.Width * 3e-3 * ClampedStrip.Porosity;
        Panel panel = ClampedStrip.Panel();
        Panel potted = panel with
        {
            Feeds = [panel.Feeds[0] with { Pot = "P" }],
            Pots = [new Pot("P", 0) { Mass = pores / 2 * 1100 }],
            Vents = [panel.Vents[0].Turned(1, new ClampStep(new WhenFull(), 0))],
        };
        Forecast forecast = Forecaster.Predict(potted, Resin, new Bag(1325, 101325), new Goals(), 1.5);
        forecast.Outcome.ShouldBe(Outcome.PotRunsDry);
        double full = ClampedStrip.ClockTo(ClampedStrip.Length) / ClampedStrip.Rate;
        forecast.EndTime.ShouldBe(full / 4, 1e-3 * full);
        forecast.FilledFraction.ShouldBe(0.5, 1e-6);
        forecast.Findings.Single(static finding => finding.Kind == FindingKind.PotRunsDry).Amount!.Value.ShouldBe(pores / 2, 1e-6 * pores);
        forecast.ClampEvents.ShouldBeEmpty();
    }
}

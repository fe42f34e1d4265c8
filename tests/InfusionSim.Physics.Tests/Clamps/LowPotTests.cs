using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Clamps;

public sealed class LowPotTests
{
    private static readonly Resin Resin = new(0.2, 1e5, 0, 1100);
    private static readonly Bag Bag = new(1325, 101325);

    [Fact]
    public void Clamp_ShutAndOpenedAtTheSameInstant_ChangesNothingBelowThePanel()
    {
        Forecast plain = Predict(Fed(-1)), turned = Predict(Fed(-1, new ClampStep(new AtTime(500), 0), new ClampStep(new AtTime(500), 1)));
        turned.FillTime!.Value.ShouldBe(plain.FillTime!.Value, 1e-9 * plain.FillTime.Value);
        turned.ResinIn[0].ShouldBe(plain.ResinIn[0], 1e-9 * plain.ResinIn[0]);
    }

    [Fact]
    public void Vacuum_SetToWhatItIs_ChangesNothing()
    {
        Forecast plain = Predict(Fed(-1)), turned = Predict(Fed(-1), Bag with { Steps = [new BagStep(new AtTime(500), Bag.Pressure)] });
        turned.FillTime!.Value.ShouldBe(plain.FillTime!.Value, 1e-9 * plain.FillTime.Value);
    }

    [Fact]
    public void Vacuum_TooWeakForTheColumn_IsRefusedByNameBecauseResinRunsBack()
    {
        // 1100 kg/m³ × 1 m take 10.8 kPa; 1.3 kPa are left.
        Bag weak = Bag with { Steps = [new BagStep(new AtTime(500), 100e3)] };
        ResinRunsBackException refused = Should.Throw<ResinRunsBackException>(() => Predict(Fed(-1), weak));
        refused.Feed.ShouldBe("F1");
        Predict(Fed(-1, new ClampStep(new AtTime(400), 0)), weak).Outcome.ShouldBe(Outcome.StopsShort);
    }

    [Fact]
    public void Pot_BelowTheReachOfTheVacuum_StopsShort()
    {
        Forecast forecast = Predict(Fed(-11, new ClampStep(new WhenFull(), 0)));
        forecast.Outcome.ShouldBe(Outcome.StopsShort);
        forecast.FilledFraction.ShouldBe(0);
    }

    [Fact]
    public void Pot_ThatHoldsHalf_RunsDryLaterTheLowerItStands()
    {
        // Half of the resin is in at a quarter of the fill time, whatever the drive.
        double pores = ClampedStrip.Length * ClampedStrip.Width * 3e-3 * ClampedStrip.Porosity;
        Panel panel = Fed(-2);
        Forecast full = Predict(panel), half = Predict(panel with { Pots = [panel.Pots[0] with { Mass = pores / 2 * 1100 }] });
        half.Outcome.ShouldBe(Outcome.PotRunsDry);
        half.EndTime.ShouldBe(full.FillTime!.Value / 4, 1e-3 * full.FillTime.Value);
    }

    private static Forecast Predict(Panel panel, Bag? bag = null) => Forecaster.Predict(panel, Resin, bag ?? Bag, new Goals(), 1.5);

    private static Panel Fed(double level, params ClampStep[] steps)
    {
        Panel panel = ClampedStrip.Panel(0.01);
        return panel with { Feeds = [panel.Feeds[0].Turned(1, steps) with { Pot = "P" }], Pots = [new Pot("P", level)] };
    }
}

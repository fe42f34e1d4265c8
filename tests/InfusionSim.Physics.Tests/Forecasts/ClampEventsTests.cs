using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Forecasts;

public class ClampEventsTests
{
    private static readonly Bag Tight = new(1325, 101_325);

    [Fact]
    public void Events_RulesThatCome_StandInOrderOfTimeAndThoseThatDoNotAreLeftOut()
    {
        // A strip of 0.5 m fills in 1250 s; its middle is passed at a quarter of that.
        Panel panel = Strip(new Clamp(1, [new(new AtTime(600), 1)]), new Clamp(1, [new(new WhenReached("M1"), 1), new(new WhenReached("nowhere"), 1)]));
        Forecast forecast = Predict(panel, Tight with { Steps = [new(new WhenFull(), 50_000), new(new WhenReached("M1"), 2000)] });

        forecast.ClampEvents.Select(static done => (done.Line, done.Value, done.When)).ShouldBe(
        [
            ("V1", 1, new WhenReached("M1")),
            (null, 2000, new WhenReached("M1")),
            ("F1", 1, new AtTime(600)),
            (null, 50_000, new WhenFull()),
        ]);
        forecast.ClampEvents[0].Time.ShouldBe(312.5, 1);
        forecast.ClampEvents[2].Time.ShouldBe(600, 1e-9);
    }

    [Fact]
    public void Likely_VacuumChangedOnceFull_DoesNotSlowTheSlowCase()
    {
        Forecast plain = Predict(Strip(Clamp.AlwaysOpen, Clamp.AlwaysOpen), Tight);
        Forecast stepped = Predict(Strip(Clamp.AlwaysOpen, Clamp.AlwaysOpen), Tight with { Steps = [new(new WhenFull(), 50_000)] });

        stepped.FillTime!.Value.ShouldBe(plain.FillTime!.Value, 1e-6);
        stepped.Likely.FillTimeTo!.Value.ShouldBe(plain.Likely.FillTimeTo!.Value, 1e-6);
        stepped.Likely.FillTimeFrom!.Value.ShouldBe(plain.Likely.FillTimeFrom!.Value, 1e-6);
    }

    private static Forecast Predict(Panel panel, Bag bag) =>
        Forecaster.Predict(panel, new Resin(0.2, 7200, 0, 1100), bag, new Goals(), 1.5);

    private static Panel Strip(Clamp feed, Clamp vent) => new(
        new Region(new Ring([new(0, 0), new(0.5, 0), new(0.5, 0.04), new(0, 0.04)]), []),
        [new Zone("skin", null, 3e-3, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0))],
        [new Feed("F1", new LinePath([new(0, 0), new(0, 0.04)]), 0.012) { Clamp = feed }],
        [new Vent("V1", new LinePath([new(0.5, 0), new(0.5, 0.04)]), 0.012, VentKind.Tube) { Clamp = vent }],
        [new TimingMark("M1", new Point2(0.25, 0.02))],
        0.01);
}

using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Resins;
using InfusionSim.Planning.Resins;

namespace InfusionSim.Planning.Tests.Resins;

public sealed class ResinCurveTests
{
    private static Forecast Predict(double viscosity, double gelTime) =>
        Forecaster.Predict(ResinPanels.Strip(), new Resin(viscosity, gelTime, 0, 1100), ResinPanels.Bag, new Goals(), 1.5);

    [Fact]
    public void Curve_StraightStrip_FollowsTheSquareRootOfTime()
    {
        IReadOnlyList<ResinMoment> curve = ResinCurve.Of(Predict(0.2, 5000), latest: 4000);

        // x/L = √(t/T) with T = 1250 s (Darcy's law with a sharp front, derived). The states hold it to the solver's tolerance and a cell that is partly wet.
        foreach (ResinMoment moment in curve) moment.FilledFraction.ShouldBe(Math.Min(1, Math.Sqrt(moment.Time / 1250)), 1e-3, $"at {moment.Time} s");
        curve[0].ShouldBe(new ResinMoment(0, 0, 0.2, 0));
        curve[^1].Time.ShouldBe(4000, 1e-9);
        curve.Count.ShouldBeLessThanOrEqualTo(ResinCurve.Points + 1);
    }

    [Fact]
    public void Curve_AtTheEndAndAtGel_TellsOneAndTheMargin()
    {
        Forecast forecast = Predict(0.2, 2500);

        IReadOnlyList<ResinMoment> curve = ResinCurve.Of(forecast, latest: 9000);

        curve.Single(moment => moment.Time == forecast.EndTime).DriveRatio.ShouldBe(1, 1e-9);
        curve[^1].Time.ShouldBe(2500, 1e-9);
        curve[^1].DriveRatio.ShouldBe(forecast.GelMargin!.Value, 1e-9);
        forecast.GelMargin!.Value.ShouldBe(2, 1e-6);
    }

    [Fact]
    public void Curve_ThatGelsOnTheWay_EndsThere()
    {
        Forecast forecast = Predict(0.2, 312.5);

        IReadOnlyList<ResinMoment> curve = ResinCurve.Of(forecast, latest: 9000);

        // A quarter of the fill time is half the way.
        curve[^1].Time.ShouldBe(312.5, 1e-9);
        curve[^1].FilledFraction.ShouldBe(0.5, 1e-6);
        curve[^1].DriveRatio.ShouldBe(0.25, 1e-6);
        curve.Zip(curve.Skip(1)).ShouldAllBe(pair => pair.First.Time < pair.Second.Time && pair.First.FilledFraction <= pair.Second.FilledFraction);
    }
}

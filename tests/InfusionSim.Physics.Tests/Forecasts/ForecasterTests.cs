using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Tests.Flow;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Tests.Forecasts;

public class ForecasterTests
{
    private static readonly Bag Tight = new(1325, 101325);

    private static readonly Resin Slow = new(0.2, 3600, 360, 1100);

    [Fact]
    public void Predict_Strip_Fills()
    {
        Forecast forecast = Predict(Strip());
        forecast.Outcome.ShouldBe(Outcome.Fills);
        forecast.Findings.ShouldBeEmpty();
        forecast.FillTime!.Value.ShouldBe(1250, 1250e-6);
        forecast.EndTime.ShouldBe(forecast.FillTime.Value);
        forecast.SpareTime!.Value.ShouldBe(3240 - forecast.FillTime.Value, 1e-9);
        forecast.FilledFraction.ShouldBe(1, 1e-9);
        forecast.MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Predict_GelBeforeTheEnd_GelsFirstAndStopsThere()
    {
        Forecast forecast = Predict(Strip(), Slow with { Gel = new StatedGel(360 + 312.5) });
        forecast.Outcome.ShouldBe(Outcome.GelsFirst);
        forecast.FillTime.ShouldBeNull();
        forecast.SpareTime.ShouldBeNull();
        forecast.GelMargin!.Value.ShouldBe(0.25, 1e-6);
        forecast.EndTime.ShouldBe(312.5, 1e-9);

        // A quarter of the time is half of the way.
        forecast.FilledFraction.ShouldBe(0.5, 1e-3);
        forecast.Findings[0].Kind.ShouldBe(FindingKind.GelsFirst);
        forecast.Vents[0].ArrivalTime.ShouldBeNull();
        forecast.Vents[0].ResinOutRate.ShouldBe(0);
        forecast.ArrivalTimes.Count(static time => time <= 312.5).ShouldBe(forecast.ArrivalTimes.Length / 2);
    }

    [Fact]
    public void Predict_GelsFirstInTheSlowCaseOnly_FindsAThinMargin()
    {
        Forecast forecast = Predict(Strip(), Slow with { Gel = new StatedGel(360 + 1500) });
        forecast.Outcome.ShouldBe(Outcome.Fills);
        forecast.Findings.ShouldHaveSingleItem().Kind.ShouldBe(FindingKind.ThinMargin);
        forecast.Likely.FillTimeTo.ShouldBeNull();
        forecast.Likely.FillTimeFrom!.Value.ShouldBe(1250 / 1.5, 1e-3);
    }

    [Fact]
    public void Predict_VentLineAcross_StopsShortBehindIt()
    {
        Panel panel = Strip() with { Vents = [TestPanels.Vent(TestPanels.Path((0.3, -0.01), (0.3, 0.11)))] };
        Forecast forecast = Predict(panel);
        forecast.Outcome.ShouldBe(Outcome.StopsShort);
        forecast.FillTime.ShouldBeNull();
        forecast.GelMargin.ShouldBeNull();
        forecast.Findings[0].Amount!.Value.ShouldBe(0.2 * 0.1, 0.002);
        forecast.FilledFraction.ShouldBe(0.6, 0.01);
    }

    [Fact]
    public void Predict_GelsOnTheWayToAPlaceItCannotReach_StillTellsTheMargin()
    {
        Panel panel = Strip() with { Vents = [TestPanels.Vent(TestPanels.Path((0.3, -0.01), (0.3, 0.11)))] };
        Forecast forecast = Predict(panel, Slow with { Gel = new StatedGel(360 + 100) });
        forecast.Outcome.ShouldBe(Outcome.GelsFirst);
        forecast.GelMargin!.Value.ShouldBeLessThan(1);
        forecast.Findings.Select(static finding => finding.Kind).ShouldBe([FindingKind.GelsFirst, FindingKind.StopsShort]);
    }

    [Fact]
    public void Predict_ClothAlikeInAllDirections_MayLieAtAnyAngle()
    {
        Panel turned = Strip() with { Zones = [TestPanels.ZoneOf("cloth", 3e-3, 0.5, 1e-10, 1e-10, angle: Math.PI / 4)] };
        Predict(turned).FillTime!.Value.ShouldBe(Predict(Strip()).FillTime!.Value, 1e-9);
    }

    [Fact]
    public void Predict_NoVent_TrapsAir()
    {
        Forecast forecast = Predict(Strip() with { Vents = [] });
        forecast.Outcome.ShouldBe(Outcome.TrapsAir);
        forecast.Findings[0].Kind.ShouldBe(FindingKind.TrapsAir);
        forecast.DrySpots.ShouldHaveSingleItem().SealedClock.ShouldBe(0);
        forecast.FilledFraction.ShouldBe(1 - 1325.0 / 101325, 1e-2);
    }

    [Fact]
    public void Predict_VentBesideTheFeed_IsReachedEarly()
    {
        Panel panel = Strip() with { Vents = [TestPanels.Vent(TestPanels.Path((0.1, 0), (0.14, 0))), TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.1)))] };
        Forecast forecast = Predict(panel);
        Finding finding = forecast.Findings.Single(static finding => finding.Kind == FindingKind.VentReachedEarly);
        finding.Line.ShouldBe("V");
        finding.Amount!.Value.ShouldBe(forecast.Vents[0].ResinOut);
        forecast.Vents[0].ResinOut.ShouldBeGreaterThan(0);
        forecast.Vents[0].FilledFractionAtArrival!.Value.ShouldBeLessThan(0.4);
    }

    [Fact]
    public void Predict_FeedThatDoublesBackAlongTheMiddlesOfCells_FillsWithEveryVolumeKept()
    {
        Panel panel = Strip() with { Feeds = [TestPanels.Feed(TestPanels.Path((0.0525, 0.0475), (0.3525, 0.0475), (0.2025, 0.0475)))] };
        Forecast forecast = Forecaster.Predict(panel, Slow, Tight with { Pressure = 0 }, new Goals(), 1.5);
        forecast.ResinInPreform.ShouldBe(0.5 * 0.1 * 0.003 * 0.5, 1e-9);
        forecast.MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Predict_PlaceBetweenTwoVentLines_IsStarvedAndStopsShort()
    {
        Panel panel = Strip() with
        {
            Vents = [TestPanels.Vent(TestPanels.Path((0.3, 0.1), (0.3, 0.002))), TestPanels.Vent(TestPanels.Path((0.32, 0), (0.32, 0.098)))],
        };
        Forecast forecast = Predict(panel);
        forecast.Outcome.ShouldBe(Outcome.StopsShort);
        forecast.Findings[0].Amount!.Value.ShouldBeGreaterThan(0.15 * 0.1);
        forecast.Findings[0].At!.Value.X.ShouldBeGreaterThan(0.32);
    }

    [Fact]
    public void Predict_ResinOutAboveTheGoal_IsFound()
    {
        Panel panel = Strip() with { Vents = [TestPanels.Vent(TestPanels.Path((0.1, 0), (0.14, 0))), TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.1)))] };
        Forecast forecast = Forecaster.Predict(panel, Slow, Tight, new Goals(MostResinOut: 1e-9), 1.5);
        forecast.Findings.ShouldContain(static finding => finding.Kind == FindingKind.ResinOutAboveGoal);
    }

    [Fact]
    public void Predict_GoalBelowFourSquares_SaysSo()
    {
        Forecast forecast = Forecaster.Predict(Strip(), Slow, Tight, new Goals(LargestDrySpot: 3.9 * 25e-6), 1.5);
        forecast.Findings.ShouldHaveSingleItem().Kind.ShouldBe(FindingKind.GoalFinerThanResolution);
    }

    // 76 s of this leak fill the pores with air of the shop's pressure: without a vent the resin is driven out again long before it gels.
    [Fact]
    public void Predict_LeakThatFillsThePoresBeforeGel_HasNoFillTime()
    {
        Panel panel = TestPanels.Strip(0.5, 0.02, 0.02, TestPanels.Cloth);
        Forecast forecast = Forecaster.Predict(panel, Slow, Tight with { Leak = new GasLeak(0.02) }, new Goals(), 1.5);

        forecast.Bag.PoresFilledIn!.Value.ShouldBe(101_325 * 1.5e-5 / 0.02, 1e-6);
        forecast.Outcome.ShouldBe(Outcome.TrapsAir);
        forecast.LastToFill.ShouldBeNull();
        forecast.FillTime.ShouldBeNull();
        forecast.GelMargin.ShouldBeNull();
        forecast.Likely.FillTimeFrom.ShouldBeNull();
        forecast.Findings.ShouldNotContain(static finding => finding.Kind == FindingKind.ThinMargin);
    }

    [Fact]
    public void Predict_Progress_RisesToOne()
    {
        List<double> told = [];
        Forecaster.Predict(Strip(), Slow, Tight, new Goals(), 1.5, new Told(told));
        told.ShouldBe(told.Order());
        told[^1].ShouldBe(1);
    }

    [Fact]
    public void Predict_Cancelled_Stops() => Should.Throw<OperationCanceledException>(
        () => Forecaster.Predict(Strip(), Slow, Tight, new Goals(), 1.5, cancellation: new CancellationToken(canceled: true)));

    [Fact]
    public void Predict_MarkBesideTheEdge_ReadsTheSameAsOneInside()
    {
        Panel panel = Strip() with { TimingMarks = [new("edge", new(0.3, 0.001)), new("middle", new(0.3, 0.05)), new("outside", new(0.6, 0.05))] };
        Forecast forecast = Predict(panel);
        forecast.TimingMarkArrivals[1]!.Value.ShouldBe(1250 * 0.36, 0.1);
        forecast.TimingMarkArrivals[0]!.Value.ShouldBe(forecast.TimingMarkArrivals[1]!.Value, 0.1);
        forecast.TimingMarkArrivals[2].ShouldBeNull();
    }

    private static Forecast Predict(Panel panel, Resin? resin = null) => Forecaster.Predict(panel, resin ?? Slow, Tight, new Goals(), 1.5);

    private static Panel Strip() => TestPanels.Strip(0.5, 0.1, 0.005, TestPanels.Cloth) with
    {
        Vents = [TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.1)))],
    };

    private sealed class Told(List<double> shares) : IProgress<ForecastProgress>
    {
        public void Report(ForecastProgress value) => shares.Add(value.DoneFraction);
    }
}

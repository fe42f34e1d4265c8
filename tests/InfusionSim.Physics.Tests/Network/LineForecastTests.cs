using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Network;

public sealed class LineForecastTests
{
    private static readonly Resin Resin = new(0.2, 1e7, 0, 1100);
    // A perfect vacuum: nothing is left to be sealed in.
    private static readonly Bag Bag = new(0, 1e5);
    private static readonly Hose Hose = new(8e-3, 2);

    [Theory]
    [InlineData(1e-10, 0.976042, false)]
    [InlineData(1.1e-9, 0.780532, true)]
    public void FeedLine_ThatLosesPressure_IsWeakAtItsEndBelowNinetyFivePerCent(double permeability, double expected, bool isWeak)
    {
        Panel panel = Panel(Rectangle(0, 0, 0.1, 2), 0.01, [ZoneOf("cloth", 3e-3, 0.5, permeability, permeability)],
            [new Feed("F1", Path((0, 0), (0, 2)), 0.012) { Bore = 10e-3 }], Vent(Path((0.1, 0), (0.1, 2))));
        Forecast forecast = Predict(panel);
        LineForecast line = forecast.FeedLines[0]!;

        line.Start.ShouldBe(1, 1e-3);
        line.EndRatio.ShouldBe(expected, 0.01 * expected);
        line.EndAt.ShouldBe(new Point2(0, 2));
        line.Volume.ShouldBe(Math.PI * 25e-6 * 2, 1e-12);
        line.Points[0].Distance.ShouldBe(0);
        line.Points[^1].Distance.ShouldBe(2);
        line.Points.Zip(line.Points.Skip(1)).ShouldAllBe(pair => pair.First.Pressure >= pair.Second.Pressure && pair.First.Distance < pair.Second.Distance);
        Finding? weak = forecast.Findings.SingleOrDefault(finding => finding.Kind == FindingKind.LineEndWeak);
        (weak is not null).ShouldBe(isWeak);
        if (weak is not null) weak.Amount.ShouldBe(line.EndRatio);
    }

    [Fact]
    public void FeedLine_FedFromItsMiddle_HoldsMoreAtItsEnds()
    {
        Feed fromEnd = new("F1", Path((0, 0), (0, 2)), 0.012) { Bore = 10e-3, Hose = new Hose(20e-3, 0.5, IsPrimed: true) };
        LineForecast end = Predict(Wide(fromEnd)).FeedLines[0]!, middle = Predict(
            Wide(fromEnd with { Hose = fromEnd.Hose! with { JoinsAt = new Point2(0, 1) } })).FeedLines[0]!;

        middle.EndRatio.ShouldBeGreaterThan(end.EndRatio + 0.1);
        middle.Points[0].Pressure.ShouldBe(middle.Points[^1].Pressure, 1e-3);

        static Panel Wide(Feed feed) =>
            Panel(Rectangle(0, 0, 0.1, 2), 0.02, [ZoneOf("cloth", 3e-3, 0.5, 1.1e-9, 1.1e-9)], [feed], Vent(Path((0.1, 0), (0.1, 2))));
    }

    [Fact]
    public void Hose_BeforeALineWithOnePressure_TakesTheSamePressureAllAlong()
    {
        Forecast forecast = Predict(
            Panel(Rectangle(0, 0, 0.5, 0.5), 0.02, [ZoneOf("cloth", 3e-3, 0.5, 2e-9, 2e-9)], [Feed(Path((0, 0), (0, 0.5))) with { Hose = Hose }]));
        LineForecast line = forecast.FeedLines[0]!;

        // Cloth and hose share the pressure as x to λ = 0.0596831 m, with the front in the middle of the last cell, x = 0.49 m.
        line.Start.ShouldBe(0.49 / (0.49 + 0.0596831), 1e-5);
        line.EndRatio.ShouldBe(1);
        forecast.Findings.ShouldNotContain(finding => finding.Kind == FindingKind.LineEndWeak);
    }

    [Fact]
    public void Line_WithoutBoreOrHose_HasNoForecast()
    {
        Forecast forecast = Predict(Panel(Rectangle(0, 0, 0.2, 0.1), 0.01, [Cloth], [Feed(Path((0, 0), (0, 0.1)))], Vent(Path((0.2, 0), (0.2, 0.1)))));

        forecast.FeedLines.ShouldBe([null]);
        forecast.VentLines.ShouldBe([null]);
    }

    [Fact]
    public void VentLine_BehindItsHose_FillsAfterTheClothIsWet()
    {
        // A vent line half way along: by the time the far end is full, resin has run through it and stands in its hose.
        Panel panel = Panel(
            Rectangle(0, 0, 0.5, 0.1), 0.01, [Cloth], [Feed(Path((0, 0), (0, 0.1)))], Vent(Path((0.25, 0), (0.25, 0.06))) with { Bore = 8e-3, Hose = Hose });
        Forecast forecast = Predict(panel);
        FillState end = forecast.Map.StateAt(forecast.Map.FillClock);

        forecast.Vents[0].ArrivalTime.ShouldNotBeNull();
        forecast.VentLines[0]!.Volume.ShouldBe(Math.PI * 16e-6 * 2.06, 1e-12);
        end.VentLineVolume[0].ShouldBeGreaterThan(1e-6);
        end.MassBalanceError.ShouldBeLessThan(1e-9);
        forecast.ResinIn[0].ShouldBe(forecast.ResinInPreform + forecast.Vents[0].ResinOut, 1e-9 * forecast.ResinIn[0]);
        end.Saturation.Take(500).ShouldAllBe(share => share > 1 - 1e-6);

        // Just before, the last place is not full yet.
        FillState before = forecast.Map.StateAt(forecast.Map.FillClock * (1 - 1e-4));
        before.Saturation[forecast.Map.LastCell].ShouldBeLessThan(1);
    }

    [Fact]
    public void Vent_OnTheOutlineBehindAnEmptyHose_DoesNotHoldUpTheCloth()
    {
        Panel panel = Panel(Rectangle(0, 0, 0.5, 0.1), 0.01, [Cloth], [Feed(Path((0, 0), (0, 0.1)))], Vent(Path((0.5, 0), (0.5, 0.1))) with { Hose = Hose });

        // The last cells are full before any resin is in the hose: the fill time is that of the sealed strip.
        Predict(panel).FillTime!.Value.ShouldBe(1250, 0.01);
    }

    [Fact]
    public void Gap_IntoAVent_ReachesItLongBeforeTheCloth()
    {
        Panel panel = Panel(Rectangle(0, 0, 0.5, 0.2), 0.01, [Cloth], [Feed(Path((0, 0), (0, 0.2)))], Vent(Path((0.5, 0), (0.5, 0.2)))) with
        {
            Gaps = [new Gap("G", Path((0, 0.2), (0.5, 0.2)), 2e-3, null)],
        };
        Forecast forecast = Predict(panel);

        forecast.Vents[0].ArrivalTime!.Value.ShouldBeLessThan(10);
        forecast.Vents[0].FilledFractionAtArrival!.Value.ShouldBeLessThan(0.2);
        forecast.Findings.ShouldContain(finding => finding.Kind == FindingKind.VentReachedEarly);
        forecast.MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Forecast_ThatGelsInTheHose_HasNoLineToSpeakOf()
    {
        Forecast forecast = Forecaster.Predict(
            Panel(Rectangle(0, 0, 0.5, 0.5), 0.05, [Cloth], [Feed(Path((0, 0), (0, 0.5))) with { Hose = Hose }]), Resin with { Gel = new StatedGel(1) }, Bag, new Goals(), 1.5);

        forecast.Outcome.ShouldBe(Outcome.GelsFirst);
        forecast.FeedLines[0].ShouldBeNull();
        forecast.ResinInPreform.ShouldBe(0);
        forecast.ResinInLines.ShouldBe(100.53e-6 * Math.Sqrt(0.5), 5e-6);
    }

    private static Forecast Predict(Panel panel) => Forecaster.Predict(panel, Resin, Bag, new Goals(), 1.5);
}

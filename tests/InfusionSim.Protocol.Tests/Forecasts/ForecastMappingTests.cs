using System.Text.Json;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Forecasts;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Forecasts;

public sealed class ForecastMappingTests
{
    [Fact]
    public void Write_StraightStrip_IsTheDocumentedJson()
    {
        const string Documented = """
            {"outcome":"OUTCOME_FILLS","findings":[],"fillTimeS":1800.0,"gelTimeS":3240.0,"spareTimeS":1440.0,"gelMarginRatio":1.8,"endTimeS":1800.0,
             "likely":{"fillTimeFromS":1200.0,"fillTimeToS":2700.0,"gelMarginFromRatio":1.2,"gelMarginToRatio":2.7,"basis":"*"},
             "filledFraction":1.0,"lastToFill":{"xMm":597.5,"yMm":2.5},"drySpots":[],"timingMarks":[{"name":"M1","arrivalTimeS":450.0}],
             "feeds":[{"name":"F1","resinInCm3":360.0,"resinInG":396.0}],
             "vents":[{"name":"V1","arrivalTimeS":1800.0,"filledFractionAtArrival":1.0,"resinOutCm3":0.0,"resinOutG":0.0,"resinOutCm3PerMin":6.0}],
             "resinInPreformCm3":360.0,"resinInPreformG":396.0,"cellsWithCloth":96,"massBalanceErrorRatio":1e-12,"numericalErrorRatio":1e-9,
             "resin":{"viscosityAtOpeningPaS":0.2,"viscosityAtEndPaS":0.2,"isExtrapolated":false,"basis":[]},"clampEvents":[],"laminates":[]}
            """;
        Contract.FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
        forecast.Likely.Basis.ShouldContain("×/÷1.5");
        forecast.Likely.Basis = "*";

        string written = ForecastJson.Write(forecast, indented: false);

        JsonElement.DeepEquals(JsonDocument.Parse(written).RootElement, JsonDocument.Parse(Documented).RootElement).ShouldBeTrue(written);
    }

    [Fact]
    public void ToContract_WhatDoesNotExist_IsLeftOut()
    {
        Forecast forecast = StripForecast.Build() with
        {
            Outcome = Outcome.StopsShort,
            FillTime = null,
            GelMargin = null,
            Likely = new LikelyBand(1.5, null, null, null, null),
            LastToFill = null,
            TimingMarkArrivals = [double.PositiveInfinity],
            Vents = [new VentForecast(null, null, 0, 0)],
        };

        string written = ForecastJson.Write(ForecastMapping.ToContract(forecast, StripForecast.Inputs), indented: false);

        foreach (string key in (string[])["fillTimeS", "spareTimeS", "gelMarginRatio", "lastToFill", "arrivalTimeS", "filledFractionAtArrival", "fillTimeFromS", "gelMarginToRatio"])
            written.ShouldNotContain($"\"{key}\"");
        written.ShouldContain("\"timingMarks\": [ { \"name\": \"M1\" } ]");
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void ToContract_NumberThatIsNone_NeverLeaves(double none)
    {
        Forecast forecast = StripForecast.Build();

        Should.Throw<ForecastNotFiniteException>(() => ForecastMapping.ToContract(forecast with { EndTime = none }, StripForecast.Inputs));
        Should.Throw<ForecastNotFiniteException>(() => ForecastMapping.ToContract(forecast with { ResinIn = [none] }, StripForecast.Inputs));
        ForecastMapping.ToContract(forecast with { FillTime = none }, StripForecast.Inputs).HasFillTimeS.ShouldBeFalse();
    }

    [Fact]
    public void ToContract_EveryOutcomeAndFinding_HasItsOwnValueAndSentence()
    {
        foreach (Outcome outcome in Enum.GetValues<Outcome>())
            ForecastMapping.ToContract(StripForecast.Build() with { Outcome = outcome }, StripForecast.Inputs).Outcome.ToString().ShouldBe(outcome.ToString());

        Finding[] findings = [.. Enum.GetValues<FindingKind>().Select(kind => new Finding(kind, new Point2(0.3, 0.2), "V1", 600, 0.5))];
        Contract.FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build() with { Findings = findings }, StripForecast.Inputs);

        forecast.Findings.Select(finding => finding.Kind.ToString()).ShouldBe(findings.Select(finding => finding.Kind.ToString()));
        forecast.Findings.Select(finding => finding.Sentence).Distinct().Count().ShouldBe(findings.Length);
        forecast.Findings.ShouldAllBe(finding => finding.Sentence.Length > 20 && finding.Sentence.EndsWith('.') && !finding.Sentence.Contains("  "));
        Enum.GetValues<Contract.FindingKind>().Length.ShouldBe(findings.Length + 1);
    }

    [Fact]
    public void ToContract_DrySpot_IsSaidInMillimetresAndSeconds()
    {
        // Δp/μ = 1e5/0.2 = 5e5 per second, so a clock of 3e8 is 600 s.
        var spot = new DrySpot(new Point2(0.3, 0.2), [3], 1.2e-3, 3e8, 0.1, 5e-7, 9e8);

        Contract.DrySpot said = ForecastMapping.ToContract(StripForecast.Build() with { DrySpots = [spot] }, StripForecast.Inputs).DrySpots.ShouldHaveSingleItem();

        said.ShouldBe(new Contract.DrySpot { At = new Contract.Point { XMm = 300, YMm = 200 }, AreaMm2 = 1200, SealedTimeS = 600, SealedAreaMm2 = 100_000, GasVolumeCm3 = 0.5 });
    }

    [Fact]
    public void ToContract_PanelOfOneLayer_SaysNothingOfATwoSidedFront()
    {
        Forecast forecast = StripForecast.Build();

        ForecastMapping.ToContract(forecast, StripForecast.Inputs).TimingMarks[0].HasToolSideArrivalTimeS.ShouldBeFalse();
        FrontMapMapping.ToContract(forecast).ToolSide.ShouldBeNull();
    }

    [Fact]
    public void ToContract_LineWithABore_SaysThePressureAlongItAndWhatStandsInIt()
    {
        Physics.Forecasts.LineForecast line = new(1e-4, [new(0, 0.9), new(0.4, 0.7)], 0.9, 0.7, new Point2(0, 0.4));
        var inputs = StripForecast.Inputs with { Panel = StripForecast.Inputs.Panel with { Feeds = [StripForecast.Inputs.Panel.Feeds[0] with { Bore = 0.01 }] } };

        Contract.FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build() with { FeedLines = [line], FeedLineVolumes = [9e-5], VentLines = [null] }, inputs);

        forecast.Feeds[0].LineVolumeCm3.ShouldBe(90);
        forecast.Feeds[0].Line.ShouldBe(new Contract.LineForecast
        {
            StartPressureRatio = 0.9,
            EndPressureRatio = 0.7,
            EndAt = new Contract.Point { XMm = 0, YMm = 400 },
            Points = { new Contract.LinePoint { DistanceM = 0, PressureRatio = 0.9 }, new Contract.LinePoint { DistanceM = 0.4, PressureRatio = 0.7 } },
        });
        forecast.Vents[0].Line.ShouldBeNull();
    }

    [Fact]
    public void ToContract_HoseOrGap_SaysThatTheBandIsAnEstimate()
    {
        static string BasisOf(Action<Contract.InfusionPlan> change) =>
            ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs with { Plan = Plans.StraightStrip.With(change) }).Likely.Basis;

        BasisOf(plan => plan.Feeds[0].BoreMm = 8).ShouldEndWith("; an estimate here, for hoses and lines do not stretch with the cloth");
        BasisOf(plan =>
        {
            plan.Pots.Add(new Contract.Pot { Hose = new Contract.Hose() });
            plan.Gaps.Add(new Contract.Gap());
        }).ShouldEndWith("; an estimate here, for hoses, lines and gaps do not stretch with the cloth");
        BasisOf(plan => plan.Slope = new Contract.Slope { AngleDeg = 20 }).ShouldEndWith("only the minutes stretch");
    }

    [Fact]
    public void FrontMap_WetDryAndUnreachedSquares_SaysOfEachWhatItIs()
    {
        Forecast forecast = StripForecast.Build();
        double[] arrivals = [.. forecast.ArrivalTimes];
        arrivals[5] = double.PositiveInfinity;
        arrivals[6] = double.PositiveInfinity;
        var spot = new DrySpot(new Point2(0.3, 0.02), [6], 1e-3, 1e8, 0.1, 5e-7, 9e8);

        Contract.FrontMap map = FrontMapMapping.ToContract(forecast with { ArrivalTimes = arrivals, DrySpots = [spot] });

        map.Grid.ShouldBe(new Contract.CellGrid { CellMm = 50, Columns = 12, Rows = 8 });
        ((Contract.SquareState)map.Squares[5]).ShouldBe(Contract.SquareState.NeverReached);
        ((Contract.SquareState)map.Squares[6]).ShouldBe(Contract.SquareState.DrySpot);
        ((Contract.SquareState)map.Squares[11]).ShouldBe(Contract.SquareState.Wets);
        map.ArrivalTimeS[11].ShouldBe(1800 * 11.5f * 11.5f / 144, 10f);
        map.ArrivalTimeS[6].ShouldBe(0);
    }
}

using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Tests.Forecasts;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class ClampWordsTests
{
    private static readonly Moment AtMark = new() { WhenReached = "M1" }, AtVent = new() { WhenReached = "V1" }, AtTen = new() { AtMin = 10 }, Full = new() { WhenFull = true };

    [Fact]
    public void Lines_WhatIsDone_ComesInOrderWithItsReasonAndTime()
    {
        InfusionPlan plan = StraightStrip.With(change =>
        {
            change.Feeds[0].ClampSteps.Add(new ClampStep { When = AtTen, OpenFraction = 0.3 });
            change.Vents[0].Shuts = AtVent;
            change.Feeds.Add(new Feed { Name = "F2", Path = StraightStrip.PathOf((300, 0), (300, 100)), Opens = AtMark });
            change.Bag.Steps.Add(new BagStep { When = Full, PressureMbarAbs = 500 });
        });
        FillForecast forecast = Strip(
            new ClampEvent { Line = "V1", TimeS = 1300, OpenFraction = 0, When = AtVent },
            new ClampEvent { Line = "F2", TimeS = 390, OpenFraction = 1, When = AtMark },
            new ClampEvent { Line = "F1", TimeS = 600, OpenFraction = 0.3, When = AtTen },
            new ClampEvent { TimeS = 1800, PressureMbarAbs = 500, When = Full });

        FillWords.Lines(plan, forecast).SkipWhile(line => line.Label != "Clamps").Take(4).Select(line => line.Text).ShouldBe(
        [
            "F2 opens when M1 is reached, 6.5 min",
            "F1 is set to 0.3 open at 10 min",
            "V1 shuts when resin shows in V1, 22 min",
            "bag to 500 mbar when full, 30 min",
        ]);
    }

    [Fact]
    public void Lines_WhatNeverComes_IsSaidWithItsReason()
    {
        InfusionPlan plan = StraightStrip.With(change =>
        {
            change.Vents[0].Shuts = new Moment { AtMin = 90 };
            change.Feeds.Add(new Feed { Name = "F2", Path = StraightStrip.PathOf((300, 0), (300, 100)), Opens = AtMark });
            change.Bag.Steps.Add(new BagStep { When = Full, PressureMbarAbs = 500 });
        });

        FillWords.Lines(plan, Strip()).SkipWhile(line => line.Label != "Clamps").Take(3).Select(line => line.Text).ShouldBe(
        [
            "F2 never opens: M1 is not reached",
            "V1 never shuts: all is over before 90 min",
            "bag never to 500 mbar: it is not full",
        ]);
    }

    [Fact]
    public void Lines_NobodyTouchesAClamp_AreNone() =>
        FillWords.Lines(StraightStrip.Plan(), Strip()).ShouldNotContain(line => line.Label == "Clamps");

    [Fact]
    public void Sentence_StopsShortWithEveryFeedShut_SaysWhy()
    {
        InfusionPlan plan = StraightStrip.With(change => change.Feeds[0].Shuts = AtMark);
        FillForecast forecast = Strip(new ClampEvent { Line = "F1", TimeS = 450, OpenFraction = 0, When = AtMark });
        forecast.Outcome = Outcome.StopsShort;
        forecast.FilledFraction = 0.5;
        forecast.EndTimeS = 1800;
        var finding = new Finding { Kind = FindingKind.StopsShort, Amount = 120_000, AmountUnit = "mm2", At = new Point { XMm = 450, YMm = 200 } };

        string sentence = FindingSentences.Of(finding, forecast, plan);

        sentence.ShouldStartWith("Every feed is shut by 7.5 min: the resin comes to rest with 50 % of the cloth full, leaves 0.12 m² dry: ");
        sentence.ShouldEndWith("Let a feed stay open longer, or open another.");
        FillWords.Lines(plan, forecast)[0].Text.ShouldBe("every feed is shut by 7.5 min; comes to rest with 50 % of the cloth full");
    }

    [Fact]
    public void Lines_VentThatIsShutWhenWet_DrawNothingAfterwards()
    {
        FillForecast forecast = Strip(new ClampEvent { Line = "V1", TimeS = 1800, OpenFraction = 0, When = AtVent });

        FillWords.Lines(StraightStrip.With(plan => plan.Vents[0].Shuts = AtVent), forecast).Single(line => line.Label == "Vent").Text
            .ShouldBe("V1 wet at 30 min, 100 % filled by then; 0 g out, shut at 30 min");
    }

    private static FillForecast Strip(params ClampEvent[] events)
    {
        FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
        forecast.ClampEvents.AddRange(events);
        return forecast;
    }
}

using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Tests.Forecasts;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class FillWordsTests
{
    private static FillForecast Forecast(Action<FillForecast>? change = null)
    {
        FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
        change?.Invoke(forecast);
        return forecast;
    }

    private static string[] Lines(FillForecast forecast, InfusionPlan? plan = null) =>
        [.. FillWords.Lines(plan ?? StraightStrip.Plan(), forecast, FrontMapMapping.ToContract(StripForecast.Build()), "strip.json").Select(line => line.Text)];

    [Fact]
    public void Text_StraightStrip_IsTheDocumentedAnswer()
    {
        FrontMap map = FrontMapMapping.ToContract(StripForecast.Build());

        FillWords.Text(FillWords.Lines(StraightStrip.Plan(), Forecast(), map, "strip.json")).ShouldBe(
            """
            FILLS    full 30 min after opening (two shots in three: 20 to 45 min)
            Gel      60 min after mixing = 54 min after opening: 24 min to spare, 9 min in the slow case
            Last     the right edge
            Vent     V1 wet at 30 min, 100 % filled by then; 0 g out. Then 6.0 cm³ (6.6 g) each minute it stays open
            Air      no dry spot above 1 cm²
            Resin    396 g in the cloth
            Sure?    numerical error below 0.1 %; the band comes from the cloth (×/÷1.5, not measured here)
            Next     infusionsim compare strip.json other.json
            """.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Text_LongLabel_KeepsTheLinesAligned()
    {
        string[] lines = FillWords.Text(FillWords.Lines(StraightStrip.Plan(), Forecast(forecast => forecast.Outcome = Outcome.StopsShort))).Split('\n');

        lines[0].ShouldStartWith("STOPS SHORT  comes");
        lines[1].ShouldStartWith("Gel          60 min");
    }

    [Fact]
    public void Lines_GelsFirst_SayHowFarItGetsAndWhatItWouldNeed()
    {
        FillForecast forecast = Forecast(change =>
        {
            change.Outcome = Outcome.GelsFirst;
            change.ClearFillTimeS();
            change.ClearSpareTimeS();
            change.GelTimeS = change.EndTimeS = 1200;
            change.GelMarginRatio = 0.5;
            change.FilledFraction = 0.71;
            change.Likely.FillTimeFromS = 1190;
        });

        string[] lines = Lines(forecast);

        lines[0].ShouldBe("solid 20 min after opening with 71 % of the cloth full (in the fast case full at 20 min)");
        lines[1].ShouldBe("26 min after mixing = 20 min after opening: 20 min too early, the fill needs 40 min (2.0 times as long)");
        lines[2].ShouldBe("the lower right corner, not reached before it gels");
        lines[3].ShouldNotContain("each minute");
    }

    [Fact]
    public void Lines_TrapsAir_NameTheLargestDrySpotAndItsPlace()
    {
        FillForecast forecast = Forecast(change =>
        {
            change.Outcome = Outcome.TrapsAir;
            change.DrySpots.Add(new DrySpot { At = new Point { XMm = 300, YMm = 200 }, AreaMm2 = 1234, SealedTimeS = 700 });
            change.DrySpots.Add(new DrySpot { At = new Point { XMm = 590, YMm = 390 }, AreaMm2 = 200, SealedTimeS = 800 });
        });

        string[] lines = Lines(forecast);

        lines[0].ShouldBe("comes to rest 30 min after opening (two shots in three: 20 to 45 min), 12 cm² stay dry: 300 mm right, 200 mm up from the lower left");
        lines[4].ShouldBe("dry spot of 12 cm²: 300 mm right, 200 mm up from the lower left; cut off from every vent at 12 min; 2 dry spots in all, 14 cm²");
    }

    [Fact]
    public void Lines_DrySpotBelowTheGoal_IsToldInPassing() =>
        Lines(Forecast(change => change.DrySpots.Add(new DrySpot { At = new Point { XMm = 590, YMm = 390 }, AreaMm2 = 60 })))[4]
            .ShouldBe("no dry spot above 1 cm² (the largest: 60 mm², the upper right corner)");

    [Fact]
    public void Lines_StopsShort_NameTheAreaThatIsNeverReachedAndARemedy()
    {
        string[] lines = Lines(Forecast(change =>
        {
            change.Outcome = Outcome.StopsShort;
            change.Findings.Add(NeverReached());
        }));

        lines[4].ShouldBe("0.12 m² never reached by the resin: 450 mm right, 200 mm up from the lower left");
        lines[^1].ShouldStartWith("give the dry place a feed of its own");
    }

    [Fact]
    public void Lines_PotTooLowForTheVacuum_NameItAndHowHighTheResinIsLifted()
    {
        InfusionPlan plan = StraightStrip.With(change =>
        {
            change.Pots.Add(new Pot { Name = "floor", LevelMm = -10_000 });
            change.Feeds[0].Pot = "floor";
        });
        Finding tooLow = NeverReached();
        tooLow.Line = "F1";
        FillForecast forecast = Forecast(change => change.Outcome = Outcome.StopsShort);
        forecast.Findings.Add(tooLow);

        // 1100 kg/m³ and 100,000 Pa: 9.27 m.
        FindingSentences.Of(tooLow, forecast, plan).ShouldStartWith("The pot of F1 stands 10 m below the feed, and this vacuum lifts the resin 9.3 m: none comes from it. ");
        Lines(forecast, plan)[^1].ShouldBe("raise the pot, then infusionsim fill strip.json");
    }

    [Fact]
    public void Lines_GelsFirstWithAPlaceNeverReached_DoNotContradictEachOther()
    {
        FillForecast forecast = Forecast(change =>
        {
            change.Outcome = Outcome.GelsFirst;
            change.FilledFraction = 0.3;
            change.Likely.ClearFillTimeFromS();
            change.Likely.ClearFillTimeToS();
            change.Findings.Add(NeverReached());
        });

        Lines(forecast)[0].ShouldEndWith("with 30 % of the cloth full");
        Lines(forecast)[4].ShouldBe("70 % of the cloth still dry when it gels; 0.12 m² never reached by the resin: 450 mm right, 200 mm up from the lower left");
        FindingSentences.Of(NeverReached(), forecast, StraightStrip.Plan())
            .ShouldStartWith("Even without gel the resin would never reach 0.12 m²: 450 mm right, 200 mm up from the lower left. Give that place");
    }

    [Fact]
    public void Sentence_PassageTooNarrow_NamesThePlaceAndTheSquares()
    {
        var finding = new Finding { Kind = FindingKind.GoalFinerThanResolution, At = new Point { XMm = 300, YMm = 200 }, Amount = 100, AmountUnit = "mm2" };

        FindingSentences.Of(finding, Forecast(), StraightStrip.Plan())
            .ShouldBe("A passage at 300 mm right, 200 mm up from the lower left is too narrow for squares of 5 mm; take smaller squares there: resolution.cellMm.");
    }

    private static Finding NeverReached() =>
        new() { Kind = FindingKind.StopsShort, At = new Point { XMm = 450, YMm = 200 }, Amount = 120_000, AmountUnit = "mm2" };

    [Fact]
    public void Lines_NoVent_SayThatAllAirStays()
    {
        InfusionPlan plan = StraightStrip.With(change => change.Vents.Clear());
        FillForecast forecast = Forecast(change =>
        {
            change.Outcome = Outcome.TrapsAir;
            change.Vents.Clear();
        });

        string[] lines = Lines(forecast, plan);

        lines[0].ShouldBe("there is no vent: all the air under the bag stays in the cloth");
        lines[3].ShouldBe("none");
        lines[4].ShouldBe("all of it stays: there is no vent");
    }

    [Fact]
    public void Lines_Membrane_SayThatItHoldsTheResin() =>
        Lines(Forecast(), StraightStrip.With(plan => plan.Vents[0].Kind = VentKind.Membrane))[3]
            .ShouldBe("V1 (membrane) wet at 30 min, 100 % filled by then; it holds the resin");

    [Fact]
    public void Lines_SlowCaseThatGels_SaysSo()
    {
        FillForecast forecast = Forecast(change => change.Likely.ClearFillTimeToS());

        Lines(forecast)[0].ShouldBe("full 30 min after opening (two shots in three: from 20 min to gelling first)");
        Lines(forecast)[1].ShouldEndWith("24 min to spare, but in the slow case it gels first");
    }

    [Fact]
    public void Lines_ResinDrawnOff_AddsUpWhatGoesThroughTheFeeds() =>
        Lines(Forecast(change => change.Vents[0].ResinOutG = 54))[5].ShouldBe("396 g in the cloth, 54 g out of the vents: 450 g through the feeds");

    [Fact]
    public void Lines_ToolSideBehind_SayHowLongHowFarAndWhereTheMeshShouldEnd()
    {
        FillForecast forecast = Forecast(change => change.Lag = new Lag { LargestMin = 1.7, LengthMm = 45.6, StopMeshBeforeVentMm = 45.6, MeshToVentMm = 0 });

        FillLine line = FillWords.Lines(StraightStrip.Plan(), forecast).Single(one => one.Label == "Tool");

        line.Text.ShouldBe("the tool side is up to 1.7 min behind the bag side, its front 46 mm; end the mesh 46 mm before the vent");
        FillWords.Lines(StraightStrip.Plan(), forecast).Count.ShouldBe(8);
    }

    [Fact]
    public void Lines_MeshThatEndsSoonEnough_SaysSo() =>
        FillWords.Lines(StraightStrip.Plan(), Forecast(change => change.Lag = new Lag { LargestMin = 1.7, StopMeshBeforeVentMm = 45.6, MeshToVentMm = 60 }))
            .Single(one => one.Label == "Tool").Text.ShouldBe("the tool side is up to 1.7 min behind the bag side; the mesh ends 60 mm before the vent: far enough");

    [Fact]
    public void Lines_ToolSideThatKeepsUp_SaysSoInAFewWords() =>
        FillWords.Lines(StraightStrip.Plan(), Forecast(change => change.Lag = new Lag { LargestMin = 0.01 }))
            .Single(one => one.Label == "Tool").Text.ShouldBe("the tool side keeps up with the bag side");

    [Fact]
    public void Lines_WeakLineEnds_NameEachWithItsShare()
    {
        FillForecast forecast = Forecast(change =>
        {
            change.Findings.Add(new Finding { Kind = FindingKind.LineEndWeak, Line = "F1", Amount = 0.7805, AmountUnit = "ratio" });
            change.Findings.Add(new Finding { Kind = FindingKind.LineEndWeak, Line = "F2", Amount = 0.91, AmountUnit = "ratio" });
        });

        FillWords.Lines(StraightStrip.Plan(), forecast).Single(one => one.Label == "Lines").Text
            .ShouldBe("F1 feeds with 78 % of its pressure at the far end; F2 feeds with 91 % of its pressure at the far end");
        FindingSentences.Of(forecast.Findings[0], forecast, StraightStrip.Plan())
            .ShouldBe("The far end of F1 feeds with only 78 % of the pressure at its beginning. Take a wider line or feed it from the middle.");
    }

    [Fact]
    public void Lines_OneLayerAndNoBore_SayNothingOfToolSideAndLines() =>
        FillWords.Lines(StraightStrip.Plan(), Forecast()).Select(line => line.Label).ShouldBe(["FILLS", "Gel", "Last", "Vent", "Air", "Resin", "Sure?"]);

    [Fact]
    public void Lines_ResinInMeshAndHoses_AddUpToWhatIsMixed()
    {
        InfusionPlan plan = StraightStrip.With(change =>
        {
            change.FlowMeshes.Add(RealLayUp.Mesh());
            change.PeelPly = new PeelPly();
            change.Gaps.Add(new Gap());
        });
        FillForecast forecast = Forecast(change =>
        {
            change.ResinInMeshG = 47;
            change.Vents[0].ResinOutG = 7.3;
            change.Feeds[0].LineVolumeCm3 = 100;
        });

        Lines(forecast, plan)[5].ShouldBe("396 g in cloth and gaps, 47 g in mesh and peel ply, 7.3 g out of the vents: 450 g through the feeds, 110 g stay in hoses and lines");
    }

    [Fact]
    public void Lines_ClimbsNoHigher_SayHowHighAndWhatToDo()
    {
        FillForecast forecast = Forecast(change =>
        {
            change.Outcome = Outcome.StopsShort;
            change.FilledFraction = 0.6;
            change.HeightReachedMm = 1234;
            change.Findings.Add(NeverReached());
        });

        Lines(forecast)[0].ShouldBe("climbs 1.2 m and comes to rest 30 min after opening with 60 % of the cloth full");
        Lines(forecast)[^2].ShouldBe("the height is known to one square, 5 mm; the band comes from the cloth (×/÷1.5, not measured here)");
        Lines(forecast)[^1].ShouldBe("raise the pot or feed from higher up, then infusionsim compare strip.json other.json");
        FindingSentences.Of(NeverReached(), forecast, StraightStrip.Plan()).ShouldBe(
            "The resin climbs 1.2 m above the lowest feed and comes to rest with 60 % of the cloth full, leaves 0.12 m² dry: 450 mm right, 200 mm up from the lower left. "
            + "Raise the pot, feed from higher up or lay the panel flatter.");
    }

    [Fact]
    public void Sentence_GelsBeforeItHasClimbed_TellsThatItWouldNotGetThereAnyway()
    {
        FillForecast forecast = Forecast(change =>
        {
            change.Outcome = Outcome.GelsFirst;
            change.HeightReachedMm = 500;
        });

        FindingSentences.Of(NeverReached(), forecast, StraightStrip.Plan()).ShouldBe(
            "Even without gel the resin would never climb to 0.12 m²: 450 mm right, 200 mm up from the lower left. Raise the pot, feed from higher up or lay the panel flatter.");
    }

    [Fact]
    public void Sentence_ToolSideBehind_SaysHowLongAndWhereTheMeshShouldEnd()
    {
        var finding = new Finding { Kind = FindingKind.ToolSideBehind, At = new Point { XMm = 300, YMm = 200 }, Amount = 3, AmountUnit = "min" };
        FillForecast forecast = Forecast(change => change.Lag = new Lag { LargestMin = 3, StopMeshBeforeVentMm = 120, MeshToVentMm = 0 });

        FindingSentences.Of(finding, forecast, StraightStrip.Plan()).ShouldBe(
            "The tool side fills 3 min after the bag side at 300 mm right, 200 mm up from the lower left. Wait that long before anything is shut; end the mesh 120 mm before the vent.");
    }

    [Fact]
    public void Lines_ManyVents_TellSixAndCountTheRest()
    {
        FillForecast forecast = Forecast(change =>
        {
            for (int k = 2; k <= 9; k++) change.Vents.Add(new VentForecast { Name = $"V{k}" });
        });

        string[] lines = Lines(forecast);

        lines[4].ShouldBe("V2 stays dry");
        lines[9].ShouldBe("and 3 more (--json lists all)");
    }
}

using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Planning.Mixing;

namespace InfusionSim.Planning.Tests.Mixing;

public sealed class MixPlannerTests
{
    private static readonly Forecast StripForecast = SamplePanels.Forecast(SamplePanels.Strip());

    private static MixSheet OfStrip(Func<MixWishes, MixWishes> wish) =>
        SamplePanels.Sheet(SamplePanels.Strip(), StripForecast, SamplePanels.Bare with { Wishes = wish(SamplePanels.Bare.Wishes) });

    // 2 m² of 1.546875 kg/m², a mesh of 0.935 kg/m² and 3 m of hose of 55.292 g/m: 5.129626 kg; 15 % more are 5.89907 kg.
    [Fact]
    public void Sheet_TwoSquareMetresUnderAMesh_IsTheSumByHand()
    {
        MixInputs inputs = SamplePanels.Bare with { Wishes = SamplePanels.Bare.Wishes with { ReserveFraction = 0.15 } };

        MixSheet sheet = SamplePanels.Sheet(SamplePanels.GlassUnderMesh(), SamplePanels.Forecast(SamplePanels.GlassUnderMesh()), inputs);

        double hose = Math.PI * 0.004 * 0.004 * 3 * 1100;
        sheet.Need.InPart.ShouldBe(3.09375, 3.09375e-9);
        sheet.Need.InMesh.ShouldBe(1.87, 1.87e-9);
        sheet.Need.InLines.ShouldBe(hose, 1e-9);
        sheet.Need.OutOfVents.ShouldBe(0);
        sheet.Need.Drawn.ShouldBe(4.96375 + hose, 5e-9);
        sheet.Mixed.ShouldBe(1.15 * (4.96375 + hose), 6e-9);

        // As printed, to their last figure.
        sheet.Need.Drawn.ShouldBe(5.129626, 5e-7);
        sheet.Mixed.ShouldBe(5.89907, 5e-6);
    }

    [Fact]
    public void Sheet_OfAStrip_IsItsPores()
    {
        MixSheet sheet = OfStrip(wishes => wishes with { ReserveFraction = 0.1, PotRest = 0.05 });

        PotPlan pot = sheet.Pots.ShouldHaveSingleItem();
        pot.Name.ShouldBe("F1");
        pot.Drawn.ShouldBe(0.396, 1e-9);
        pot.Mixed.ShouldBe(0.396 * 1.1 + 0.05, 1e-9);
        sheet.Mixed.ShouldBe(pot.Mixed, 1e-12);
        pot.Pours.ShouldBe([new BatchPour(0, 0)]);
        pot.Heat.ShouldBeNull();
    }

    // 6 cm³ leave each minute while the vent stays open.
    [Fact]
    public void Sheet_VentThatStaysOpen_DrawsOn() =>
        OfStrip(wishes => wishes with { VentsOpenAfter = 600 }).Need.OutOfVents.ShouldBe(60e-6 * 1100, 1e-6);

    // The strip draws with the root of time: 300 g of 396 g are in at 1800 s · (300/396)².
    [Fact]
    public void Batches_OfALimitedPot_ArePouredWhenItIsDownToItsRest()
    {
        PotPlan pot = OfStrip(wishes => wishes with { PotRest = 0.054, LargestBatch = 0.16 }).Pots[0];

        pot.Batch.ShouldBe(0.15, 1e-9);
        pot.Pours.Count.ShouldBe(3);
        pot.Pours[0].ShouldBe(new BatchPour(0, 0));
        pot.Pours[1].Time!.Value.ShouldBe(1800 * Math.Pow(0.096 / 0.396, 2), 0.005 * 1800);
        pot.Pours[2].Time!.Value.ShouldBe(1800 * Math.Pow(0.246 / 0.396, 2), 0.005 * 1800);
        pot.Pours[2].Early!.Value.ShouldBe(pot.Pours[2].Time!.Value / 1.5, 1e-6);
    }

    [Fact]
    public void Batches_ThatFitExactly_AreNoMoreThanNeeded() =>
        OfStrip(wishes => wishes with { LargestBatch = 0.198 }).Pots[0].Pours.Count.ShouldBe(2);

    // With 79.2 g of reserve and 6.6 g leaving each minute it takes 12 minutes more until only the rest is left.
    [Fact]
    public void Pot_WithAReserve_IsEmptyWhenTheVentHasDrawnIt() =>
        OfStrip(wishes => wishes with { ReserveFraction = 0.2, PotRest = 0.1 }).Pots[0].EmptyTime!.Value.ShouldBe(1800 + 720, 0.1);

    [Fact]
    public void Batch_ThatOnlyTheReserveNeedsBehindAMembrane_IsNeverPoured()
    {
        Panel panel = SamplePanels.FedTwice();

        MixSheet sheet = SamplePanels.Sheet(
            panel, SamplePanels.Forecast(panel), SamplePanels.Bare with { Wishes = SamplePanels.Bare.Wishes with { ReserveFraction = 1, LargestBatch = 0.198 } });

        sheet.Pots.Count.ShouldBe(2);
        sheet.Pots.ShouldAllBe(pot => pot.Pours.Count == 2 && pot.Pours[1] == new BatchPour(null, null) && pot.EmptyTime == null);
    }

    [Fact]
    public void Pots_OfTwoFeedsAlike_ShareTheNeed()
    {
        Panel apart = SamplePanels.FedTwice();
        Panel together = apart with { Feeds = [.. apart.Feeds.Select(feed => feed with { Pot = "P" })], Pots = [new("P", 0)] };

        MixSheet two = SamplePanels.Sheet(
            apart, SamplePanels.Forecast(apart), SamplePanels.Bare with { Wishes = SamplePanels.Bare.Wishes with { PotRest = 0.1 } });
        MixSheet one = SamplePanels.Sheet(
            together, SamplePanels.Forecast(together), SamplePanels.Bare with { Wishes = SamplePanels.Bare.Wishes with { PotRest = 0.1 } });

        two.Pots.Select(pot => pot.Name).ShouldBe(["F1", "F2"]);
        two.Pots.ShouldAllBe(pot => Math.Abs(pot.Drawn - 0.198) < 1e-8);
        two.Mixed.ShouldBe(0.596, 1e-8);
        one.Pots.ShouldHaveSingleItem().Drawn.ShouldBe(0.396, 1e-8);
        one.Mixed.ShouldBe(0.496, 1e-8);
    }

    [Fact]
    public void Pot_ThatThePlanFillsTooLittle_SaysWhenItRunsDry()
    {
        Panel panel = SamplePanels.Strip();
        panel = panel with { Feeds = [panel.Feeds[0] with { Pot = "P" }], Pots = [new("P", 0) { Mass = 0.198 }] };

        PotPlan pot = SamplePanels.Sheet(panel, StripForecast, SamplePanels.Bare).Pots.ShouldHaveSingleItem();

        pot.Holds.ShouldBe(0.198);
        pot.RunsDryTime!.Value.ShouldBe(450, 1);
    }

    [Fact]
    public void Need_ResinThatGelsFirst_IsThatOfAFullPanel()
    {
        Forecast gelled = SamplePanels.Forecast(SamplePanels.Strip(), gelTime: 450);

        gelled.Outcome.ShouldBe(Outcome.GelsFirst);
        ResinNeed.Of(gelled, SamplePanels.Density, 0).Drawn.ShouldBe(0.396, 1e-9);
    }

    [Fact]
    public void Need_PrimedHose_IsMixedToo()
    {
        Panel panel = SamplePanels.Strip();
        Hose hose = new(0.008, 2);
        Panel empty = panel with { Feeds = [panel.Feeds[0] with { Hose = hose }] }, primed = panel with { Feeds = [panel.Feeds[0] with { Hose = hose with { IsPrimed = true } }] };

        double before = ResinNeed.Of(SamplePanels.Forecast(empty), SamplePanels.Density, 0).InLines, after = ResinNeed.Of(
            SamplePanels.Forecast(primed), SamplePanels.Density, 0).InLines;

        before.ShouldBe(Math.PI * 16e-6 * 2 * 1100, 1e-9);
        // The node at which a primed hose ends keeps a trace of volume.
        after.ShouldBe(before, 1e-6);
    }
}

using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Mixing;
using InfusionSim.Protocol.Tests.Forecasts;
using InfusionSim.Protocol.Tests.Mixing;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;
using MixRatio = InfusionSim.Planning.Mixing.MixRatio;
using MixSheet = InfusionSim.Planning.Mixing.MixSheet;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class MixWordsTests
{
    private static string Text(MixSheet sheet, Action<FillForecast>? change = null, Action<Mix>? wish = null, Action<Resin>? resin = null)
    {
        FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
        change?.Invoke(forecast);
        InfusionPlan plan = RealLayUp.With(plan => plan.Mix = new Mix { ReserveFraction = 0.15, PotRestG = 100, WarmestPotDegC = 40 });
        wish?.Invoke(plan.Mix);
        resin?.Invoke(plan.Resin);
        return FillWords.Text([.. MixWords.Lines(plan, MixSheetMapping.ToContract(sheet), forecast).TakeWhile(line => line.Label != "Caution")]);
    }

    [Fact]
    public void Text_TwoBatches_TellsWhatToWeighAndWhenToPour() =>
        Text(SampleSheet.Of(MixRatio.OfMass(25), SampleSheet.Cool)).ShouldBe(
            """
            MIX      6,000 g: 4,800 g of resin and 1,200 g of hardener
            Where    3,094 g in the part, 1,870 g in mesh and peel ply, 166 g in feed lines and their hoses: 5,130 g drawn
            On top   770 g of reserve (15 %), 100 g stay in the pot: a hose that sucks air spoils the panel
            Pour     2 batches of 3,000 g: 2,400 g of resin and 600 g of hardener each
                     in the pot after opening: batch 2 by 5 min (fast case 3.3 min). All of it is reckoned as old as the first batch
            Heat     up to 32 °C in the 21 min that 3,000 g stand in the pot in the slow case. Left standing it gels 34 min after mixing and runs away: above 200 °C
            Empty    down to its rest 40 min after opening while the vents stay open
            Fill     full 30 min after opening (two shots in three: 20 to 45 min)
            """.ReplaceLineEndings("\n"));

    [Fact]
    public void Text_NoRatio_TellsBothTogetherAndWhatToAdd()
    {
        string text = Text(SampleSheet.Of());

        text.ShouldContain("MIX      6,000 g of resin and hardener together\n         to part them, give resin.mixRatio.partsByMass");
        text.ShouldContain("Heat     not known without resin.kinetics with heatOfReactionJPerKg. A full pot gels much sooner than thin cloth");
    }

    [Fact]
    public void Text_BatchLargerThanTheCupOfTheDataSheet_SaysThatItGelsSooner() =>
        Text(SampleSheet.Of(), resin: resin => resin.GelTimeMassG = 100).ShouldContain(
            "Heat     not known without resin.kinetics with heatOfReactionJPerKg. The gel time was measured on 100 g: 3,000 g in a pot gel sooner");

    [Fact]
    public void Text_PotThatGetsTooWarm_SaysSoAndWhatToDo()
    {
        Text(SampleSheet.Of(heat: SampleSheet.Warm)).ShouldContain(
            "Heat     up to 57 °C in the 21 min that 3,000 g stand in the pot in the slow case, above the 40 °C that you allow. A shallower pot or a slower hardener. "
            + "Left standing it gels 34 min after mixing and reaches 147 °C");
        Text(SampleSheet.Of(heat: SampleSheet.Hot), wish: mix => mix.LargestBatchG = 3000).ShouldContain(
            "Heat     RUNS AWAY in the 21 min that 3,000 g stand in the pot in the slow case: above 200 °C. Smaller batches, a shallower pot or a slower hardener.");
    }

    [Fact]
    public void Text_OneBatchBehindAMembrane_IsPouredAtOnceAndNeverEmpty()
    {
        string text = Text(SampleSheet.Of(change: pot => pot with { Pours = [new(0, 0)], EmptyTime = null }));

        text.ShouldContain("Pour     all at once\n");
        text.ShouldContain("Empty    never: when the panel is full nothing more is drawn");
    }

    [Fact]
    public void Text_BatchThatOnlyTheReserveNeeds_IsHeldBack() =>
        Text(SampleSheet.Of(change: pot => pot with { Pours = [new(0, 0), new(null, null)] })).ShouldContain("\n         the last batch is reserve: mix it only when it is needed\n");

    [Fact]
    public void Text_PotThatHoldsTooLittle_SaysWhenItIsDry() =>
        Text(SampleSheet.Of(change: pot => pot with { Holds = 4, RunsDryTime = 1100 })).ShouldContain("\n         the plan has only 4,000 g in it: dry at 18 min\n");

    [Fact]
    public void Text_ForecastThatGelsFirst_SaysThatTheWeightsAreThoseOfAFullPanel() =>
        Text(SampleSheet.Of(), forecast =>
        {
            forecast.Outcome = Outcome.GelsFirst;
            forecast.Likely = null;
        }).ShouldContain("Fill     GELS FIRST: solid");

    [Fact]
    public void Cautions_OfASheet_SpeakOfTheRestAndTheCatchPot()
    {
        string[] lines = [.. MixCautions.Lines(MixSheetMapping.ToContract(SampleSheet.Of() with { Need = new(3, 1, 0, 0.2) }))];

        lines[0].ShouldBe("Your data sheet and local rules prevail over every number here.");
        lines[2].ShouldStartWith("The 870 g that stay in the pot and the 200 g in the catch pot are pots too");
    }
}

using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Tests.Forecasts;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class BagWordsTests
{
    private static readonly InfusionPlan Styrenated = StraightStrip.With(plan =>
    {
        plan.Shop = new Shop { TemperatureDegC = 25 };
        plan.Resin.Volatiles.Add(new ResinVolatile { Kind = VolatileKind.Styrene, MoleFraction = 0.5 });
        plan.Bag.PressureMbarAbs = 2;
    });

    [Fact]
    public void Lines_LeakAndPump_SayWhatLeaksWhatIsHeldAndWhatTheDryClothHas()
    {
        var bag = new BagForecast { LeakMbarLPerS = 0.2666667, LeakCm3PerMin = 15.79, HeldMbarAbs = 3.24, PumpDownS = 83, DryClothMbarAbs = 18.3 };

        Line(bag).ShouldBe("leaks 0.27 mbar·L/s (16 cm³ of air a minute); the pump holds 3.2 mbar against it, drawn down in 83 s; air in the dry cloth at about 18 mbar, the vents at 13 mbar"
            .Replace("83 s", Amounts.Time(83), StringComparison.Ordinal));
    }

    [Fact]
    public void Lines_NothingKnownOfTheBag_AreNone() =>
        FillWords.Lines(StraightStrip.Plan(), Strip(null)).ShouldNotContain(line => line.Label == "Bag");

    [Fact]
    public void Sentence_MayBoil_NamesTheComponentBothPressuresAndTheDataSheet()
    {
        var finding = new Finding { Kind = FindingKind.MayBoil, Amount = 4.36, AmountUnit = "mbar_abs" };
        FillForecast forecast = Strip(new BagForecast { BoilsBelowMbarAbs = 4.36, BoilingIsExtrapolated = true });

        string sentence = FindingSentences.Of(finding, forecast, PlanChecker.Check(Styrenated).Plan);

        sentence.ShouldBe("The styrene in the resin may boil under 2 mbar and leave voids: stay above 4.4 mbar (extrapolated), better with a margin. "
            + "What the resin's data sheet says of the vacuum comes first.");
    }

    [Fact]
    public void Lines_ResinThatBoils_SayBelowWhatItDoes()
    {
        FillForecast forecast = Strip(new BagForecast { BoilsBelowMbarAbs = 4.36, BoilingIsExtrapolated = true });
        forecast.Findings.Add(new Finding { Kind = FindingKind.MayBoil, Amount = 4.36, AmountUnit = "mbar_abs" });

        FillWords.Lines(PlanChecker.Check(Styrenated).Plan, forecast).Single(line => line.Label == "Bag").Text
            .ShouldBe("the resin boils below 4.4 mbar (extrapolated); the bag has 2 mbar: it may bubble near the vents");
    }

    [Fact]
    public void Lines_LeakThatFillsThePoresBeforeGel_SayThatItDrivesTheResinOut()
    {
        InfusionPlan plan = StraightStrip.With(static plan => plan.Vents.Clear());
        FillForecast forecast = Strip(new BagForecast { LeakMbarLPerS = 5, LeakCm3PerMin = 296, LeakFillsPoresS = 73 });
        (forecast.Outcome, forecast.LastToFill) = (Outcome.TrapsAir, null);
        forecast.ClearSpareTimeS();

        IReadOnlyList<FillLine> lines = FillWords.Lines(plan, forecast, planFile: "leak.json");

        string pace = $"there is no vent, and the leak would fill all pores with air in {Amounts.Time(73)}: it drives the resin out again";
        lines[0].ShouldBe(new FillLine("TRAPS AIR", pace));
        lines.Single(static line => line.Label == "Last").Text.ShouldBe("no place stays full");
        lines.Single(static line => line.Label == "Sure?").Text.ShouldStartWith("where the leak lies decides");
        lines.Single(static line => line.Label == "Next").Text.ShouldStartWith("find the leak");
        FindingSentences.Of(new Finding { Kind = FindingKind.TrapsAir }, forecast, plan).ShouldBe(
            "T" + pace[1..] + ". Find the leak, and put a vent where the cloth fills last.");
    }

    [Fact]
    public void Sentence_DrySpotThatALeakFeeds_SaysThatItGrows()
    {
        FillForecast forecast = Strip(new BagForecast { LeakMbarLPerS = 5, LeakFillsPoresS = 73 });
        forecast.Outcome = Outcome.TrapsAir;
        Finding finding = new() { Kind = FindingKind.TrapsAir, Amount = 2000, AmountUnit = "mm2" };

        FindingSentences.Of(finding, forecast, StraightStrip.Plan()).ShouldContain($"It grows, for the leak would fill all pores with air in {Amounts.Time(73)}: find the leak first.");
        forecast.Bag.LeakFillsPoresS = forecast.GelTimeS + 1;
        FindingSentences.Of(finding, forecast, StraightStrip.Plan()).ShouldNotContain("leak");
    }

    private static string Line(BagForecast bag) => FillWords.Lines(StraightStrip.Plan(), Strip(bag)).Single(line => line.Label == "Bag").Text;

    private static FillForecast Strip(BagForecast? bag)
    {
        FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
        forecast.Bag = bag;
        return forecast;
    }
}

using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Tests.Forecasts;
using InfusionSim.Protocol.Tests.Plans;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Protocol.Tests.Words;

public sealed class EmptyPotWordsTests
{
    private static readonly Finding Empty = new() { Kind = FindingKind.PotRunsDry, Line = "F1", TimeS = 600, Amount = 100, AmountUnit = "cm3" };

    [Fact]
    public void Sentence_PotOfOneFeed_SaysWhenWhichAndHowMuchMore() =>
        Sentence(StraightStrip.Plan()).ShouldBe("The pot of F1 is empty at 10 min with 58 % of the cloth full; the rest takes 110 g (100 cm³) more. Mix more, or shut its feed before it sucks air.");

    [Fact]
    public void Sentence_PotThatFeedsShare_NamesThemAll() =>
        Sentence(StraightStrip.With(plan =>
        {
            plan.Pots.Add(new Pot { Name = "P1", MassG = 200 });
            plan.Feeds[0].Pot = "P1";
            plan.Feeds.Add(new Feed { Name = "F2", Pot = "P1" });
        })).ShouldStartWith("The pot of F1 and F2 is empty at 10 min");

    [Fact]
    public void Outcome_PotRunsDry_SaysWhenAndHowFarItGot()
    {
        FillForecast forecast = Strip();

        FillWords.Lines(StraightStrip.Plan(), forecast)[0].ShouldBe(new FillLine("POT RUNS DRY", "a pot is empty 10 min after opening with 58 % of the cloth full"));
    }

    [Fact]
    public void Lines_PotRunsDry_SayWhatStaysDryAndHowToMixEnough()
    {
        FillLine[] lines = [.. FillWords.Lines(StraightStrip.Plan(), Strip(), planFile: "strip.json")];

        lines.Single(line => line.Label == "Air").Text.ShouldBe("42 % of the cloth still dry when the pot is empty");
        lines.Single(line => line.Label == "Last").Text.ShouldEndWith("not reached before the pot is empty");
        lines.Single(line => line.Label == "Next").Text.ShouldBe("infusionsim mix strip.json says how much to mix");
    }

    private static string Sentence(InfusionPlan plan) => FindingSentences.Of(Empty, Strip(), plan);

    private static FillForecast Strip()
    {
        FillForecast forecast = ForecastMapping.ToContract(StripForecast.Build(), StripForecast.Inputs);
        (forecast.Outcome, forecast.FilledFraction, forecast.EndTimeS) = (Outcome.PotRunsDry, 0.577, 600);
        return forecast;
    }
}

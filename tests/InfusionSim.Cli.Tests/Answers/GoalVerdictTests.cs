using InfusionSim.Cli.Answers;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Tests.Answers;

public sealed class GoalVerdictTests
{
    [Theory]
    [InlineData(Outcome.Fills, 1.0, 0, true)]
    [InlineData(Outcome.Fills, 0.999, 0, false)]
    [InlineData(Outcome.TrapsAir, 5.0, 0, false)]
    [InlineData(Outcome.GelsFirst, 5.0, 0, false)]
    [InlineData(Outcome.Fills, 5.0, 1e6, true)]
    public void Goals_LeftOut_AreTheUsualOnes(Outcome outcome, double margin, double resinOut, bool met) =>
        GoalVerdict.IsMet(new InfusionPlan(), Forecast(outcome, margin, resinOut)).ShouldBe(met);

    [Theory]
    [InlineData(1.5, 100, true)]
    [InlineData(1.49, 100, false)]
    [InlineData(1.5, 100.1, false)]
    public void Goals_Given_AreJudged(double margin, double resinOut, bool met)
    {
        InfusionPlan plan = new() { Goals = new Goals { SmallestGelMarginRatio = 1.5, MostResinOutCm3 = 100 } };

        GoalVerdict.IsMet(plan, Forecast(Outcome.Fills, margin, resinOut)).ShouldBe(met);
    }

    [Fact]
    public void Missed_TwoGoals_SaysBothWithWhatWasAsked()
    {
        InfusionPlan plan = new() { Goals = new Goals { SmallestGelMarginRatio = 1.5, MostResinOutCm3 = 100 } };

        string[] missed = [.. GoalVerdict.Missed(plan, Forecast(Outcome.Fills, 1.2, 130))];

        missed.Length.ShouldBe(2);
        missed[0].ShouldBe("time to gel is 1.2 times the time to fill; you ask for 1.5");
        missed[1].ShouldContain("130 cm³");
        missed[1].ShouldContain("you allow 100 cm³");
    }

    [Fact]
    public void Missed_NoGoal_SaysNothing() => GoalVerdict.Missed(new InfusionPlan(), Forecast(Outcome.Fills, 2, 0)).ShouldBeEmpty();

    private static FillForecast Forecast(Outcome outcome, double margin, double resinOut) => new()
    {
        Outcome = outcome,
        GelMarginRatio = margin,
        Vents = { new VentForecast { Name = "V1", ResinOutCm3 = resinOut } },
    };
}

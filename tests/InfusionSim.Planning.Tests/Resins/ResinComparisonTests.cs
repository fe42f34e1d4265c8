using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Planning.Mixing;
using InfusionSim.Planning.Resins;

namespace InfusionSim.Planning.Tests.Resins;

public sealed class ResinComparisonTests
{
    private static readonly Goals NoGoals = new();

    private static IReadOnlyList<ResinOnPanel> Compare(Panel panel, params Resin[] resins) =>
        ResinComparison.Of(panel, Candidates(resins), ResinPanels.Bag, NoGoals, 1.5);

    private static ResinCandidate[] Candidates(params Resin[] resins) => [.. resins.Select(resin => new ResinCandidate(resin, ResinPanels.Mixing))];

    [Fact]
    public void Comparison_OnOneFlow_AnswersAsEachResinAlone()
    {
        // The second gels just before it is full.
        Resin[] resins = [new(0.2, 3600, 360, 1100), new(0.5, 3000, 0, 900), new(0.05, 900, 60, 1300)];

        IReadOnlyList<ResinOnPanel> together = Compare(ResinPanels.Strip(), resins);

        foreach ((int index, ResinOnPanel one) in together.Index())
        {
            Forecast alone = Forecaster.Predict(ResinPanels.Strip(), resins[index], ResinPanels.Bag, NoGoals, 1.5);
            one.Sharing.ShouldBe(FlowSharing.Shared);
            one.Resin.ShouldBe(resins[index]);
            one.Forecast.Outcome.ShouldBe(alone.Outcome);
            one.Forecast.FillTime.ShouldBe(alone.FillTime);
            one.Forecast.GelMargin.ShouldBe(alone.GelMargin);
            one.Forecast.Likely.ShouldBe(alone.Likely);
            // A state is solved on from the last one asked for, so it is the same to the solver's tolerance only.
            one.Forecast.Vents[0].ArrivalTime.HasValue.ShouldBe(alone.Vents[0].ArrivalTime.HasValue);
            (one.Forecast.Vents[0].ArrivalTime ?? 0).ShouldBe(alone.Vents[0].ArrivalTime ?? 0, 1e-8 * alone.EndTime);
            one.Forecast.Vents[0].ResinOutRate.ShouldBe(alone.Vents[0].ResinOutRate, 1e-9 * alone.Vents[0].ResinOutRate);
            one.Forecast.FilledFraction.ShouldBe(alone.FilledFraction, 1e-9);
            one.Forecast.ArrivalTimes.ShouldBe(alone.ArrivalTimes);
        }
    }

    [Fact]
    public void Comparison_TwiceTheViscosity_FillsInTwiceTheTime()
    {
        IReadOnlyList<ResinOnPanel> answers = Compare(ResinPanels.Strip(), new Resin(0.2, 36000, 0, 1100), new Resin(0.4, 36000, 0, 1100));

        // φ μ L² / (2 K Δp) = 1250 s with 0.2 Pa·s (Darcy's law with a sharp front, derived).
        answers[0].Forecast.FillTime!.Value.ShouldBe(1250, 1250e-6);
        answers[1].Forecast.FillTime!.Value.ShouldBe(2500, 2500e-6);
        (answers[1].ViscosityAtOpening, answers[1].ViscosityAtEnd).ShouldBe((0.4, 0.4));
    }

    [Fact]
    public void Comparison_ToMix_IsWhatTheMixSheetSays()
    {
        // One of the two gels half-way; nobody mixes for half a panel.
        Resin[] resins = [new(0.2, 36000, 0, 1100), new(0.2, 600, 0, 1300)];

        IReadOnlyList<ResinOnPanel> answers = Compare(ResinPanels.Strip(), resins);

        foreach ((int index, ResinOnPanel one) in answers.Index())
        {
            MixInputs inputs = new(resins[index].Density, 0, ResinPanels.Mixing);
            double sheet = MixPlanner.Plan(ResinPanels.Strip(), one.Forecast, inputs, time => one.Forecast.Map.StateAt(one.Forecast.Clock.ClockAt(time))).Mixed;
            one.ToMix.ShouldBe(sheet, 1e-9 * sheet);
            // 75 cm³ of pores, a tenth on top, 50 g left in the pot.
            one.ToMix.ShouldBe(75e-6 * resins[index].Density * 1.1 + 0.05, 1e-6);
        }
    }

    [Fact]
    public void Comparison_OnASlope_FollowsAgainForAnotherDensityOnly()
    {
        Resin[] resins = [new(0.2, 36000, 0, 1100), new(0.4, 36000, 0, 1100), new(0.2, 36000, 0, 1300)];

        IReadOnlyList<ResinOnPanel> answers = Compare(ResinPanels.Slope(), resins);

        answers.Select(answer => answer.Sharing).ShouldBe([FlowSharing.Shared, FlowSharing.Shared, FlowSharing.AgainForWeight]);
        ReferenceEquals(answers[0].Forecast.Map, answers[1].Forecast.Map).ShouldBeTrue();
        foreach ((int index, ResinOnPanel one) in answers.Index())
            one.Forecast.FillTime.ShouldBe(Forecaster.Predict(ResinPanels.Slope(), resins[index], ResinPanels.Bag, NoGoals, 1.5).FillTime);
        // The heavier resin climbs more slowly.
        answers[2].Forecast.FillTime!.Value.ShouldBeGreaterThan(answers[0].Forecast.FillTime!.Value * 1.0005);
    }

    [Fact]
    public void Groups_SomethingDoneAtAMinute_BeginWithTheResinThatIsFurthest()
    {
        Resin[] resins = [new(0.4, 36000, 0, 1100), new(0.2, 36000, 0, 1100)];
        Bag bag = ResinPanels.Bag with { Steps = [new BagStep(new AtTime(600), 50_000)] };
        FlowKnowledge knowledge = FlowKnowledge.Of(ResinPanels.Strip(), bag);

        IReadOnlyList<IReadOnlyList<int>> groups = FlowGroups.Of(resins, bag, knowledge);

        groups.Select(static group => group.Single()).ShouldBe([1, 0]);
        FlowGroups.SharingOf(groups[0], groups, knowledge).ShouldBe(FlowSharing.Shared);
        FlowGroups.SharingOf(groups[1], groups, knowledge).ShouldBe(FlowSharing.AgainForMinutes);
    }

    [Theory]
    [InlineData(300, false)]
    [InlineData(30000, true)]
    public void Comparison_AFeedOpensAtAMinute_GoesAlongUpToThere(double minute, bool isAfterTheEnd)
    {
        Panel panel = ResinPanels.Strip();
        LinePath across = new([new(0.3, 0), new(0.3, 0.1)]);
        panel = panel with { Feeds = [.. panel.Feeds, new Feed("F2", across, 0.012) { Clamp = new Clamp(0, [new ClampStep(new AtTime(minute), 1)]) }] };
        Resin[] resins = [new(0.4, 36000, 0, 1100), new(0.2, 36000, 0, 1100), new(0.3, 36000, 0, 1200)];

        IReadOnlyList<ResinOnPanel> answers = ResinComparison.Of(panel, Candidates(resins), ResinPanels.Bag, NoGoals, 1.5);

        answers.Select(static answer => answer.Sharing == FlowSharing.Shared).ShouldBe([isAfterTheEnd, true, isAfterTheEnd]);
        if (isAfterTheEnd) answers[0].TakenUntil.ShouldBe(double.PositiveInfinity);
        else answers[0].TakenUntil.ShouldBe(minute, 1e-9 * minute);
        foreach ((int index, ResinOnPanel one) in answers.Index())
        {
            Forecast alone = Forecaster.Predict(panel, resins[index], ResinPanels.Bag, NoGoals, 1.5);
            one.Forecast.FillTime!.Value.ShouldBe(alone.FillTime!.Value, 1e-7 * alone.FillTime!.Value);
            one.Forecast.NumericalError.ShouldBe(alone.NumericalError, 1e-6);
            FillState along = one.Forecast.Map.StateAt(0.6 * one.Forecast.Map.FillClock), expected = alone.Map.StateAt(0.6 * one.Forecast.Map.FillClock);
            along.FilledFraction.ShouldBe(expected.FilledFraction, 1e-7);
            along.MassBalanceError.ShouldBeLessThan(1e-9);
        }
    }

    [Fact]
    public void Best_OfThoseThatMeetTheGoals_IsFullSoonest()
    {
        // The first gels on the way, the second is short of the margin, the fourth is slower than the third.
        Resin[] resins = [new(0.1, 300, 0, 1100), new(0.15, 1200, 0, 1100), new(0.2, 36000, 0, 1100), new(0.3, 36000, 0, 1100)];

        IReadOnlyList<ResinOnPanel> answers = ResinComparison.Of(
            ResinPanels.Strip(), Candidates(resins), ResinPanels.Bag, new Goals(SmallestGelMargin: 2), 1.5);

        answers.Select(answer => answer.MeetsGoals).ShouldBe([false, false, true, true]);
        ResinChoice.BestOf(answers).ShouldBe(2);
        ResinChoice.BestOf([answers[0], answers[1]]).ShouldBeNull();
    }

    [Fact]
    public void Progress_OfSeveralFlows_RisesToOneOnce()
    {
        List<double> told = [];

        ResinComparison.Of(
            ResinPanels.Slope(), Candidates(new(0.2, 36000, 0, 1100), new(0.2, 36000, 0, 1300)), ResinPanels.Bag, NoGoals, 1.5, new Told(told));

        told.ShouldBe(told.Order());
        told.Count(share => share == 1).ShouldBe(1);
    }

    [Fact]
    public void Comparison_Cancelled_Stops() =>
        Should.Throw<OperationCanceledException>(() => ResinComparison.Of(
            ResinPanels.Strip(), Candidates(new Resin(0.2, 36000, 0, 1100)), ResinPanels.Bag, NoGoals, 1.5, cancellation: new CancellationToken(canceled: true)));

    private sealed class Told(List<double> shares) : IProgress<ForecastProgress>
    {
        public void Report(ForecastProgress value) => shares.Add(value.DoneFraction);
    }
}

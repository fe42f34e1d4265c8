using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Clamps;

public sealed class SameCourseTests
{
    private static readonly Bag Bag = new(5e3, 1e5);

    [Theory]
    [InlineData(1)]
    [InlineData(0.7)]
    [InlineData(1.4)]
    public void Fill_GoingAlongWithAnother_EndsAsItDoesAlone(double faster)
    {
        // A second feed opens when the front passes a mark; the vent is shut at a minute, which seals in what lies before it.
        FillMap before = FillMap.Compute(FillProblemBuilder.Build(Turned()), At(1)), alone = FillMap.Compute(FillProblemBuilder.Build(Turned()), At(faster));
        before.Turns.Count.ShouldBe(2);

        FillMap along = before.Again(At(faster));

        if (faster == 1) along.TakenUntil.ShouldBe(double.PositiveInfinity);
        else along.TakenUntil.ShouldBe(ClampedStrip.ClockTo(0.3) * Math.Min(faster, 1), 1e-9 * ClampedStrip.ClockTo(0.3));
        along.Turns.Select(static turn => turn.When).ShouldBe(alone.Turns.Select(static turn => turn.When));
        // The front is followed to within a thousandth of the fill; a minute comes when it comes.
        foreach ((ClampTurn turn, ClampTurn expected) in along.Turns.Zip(alone.Turns))
            turn.Clock.ShouldBe(expected.Clock, turn.When is AtTime ? 1e-12 * expected.Clock : 1e-3 * alone.FillClock);
        along.FillClock.ShouldBe(alone.FillClock, 1e-3 * alone.FillClock);
        along.Pockets.Sum(static pocket => pocket.Amount).ShouldBe(
            alone.Pockets.Sum(static pocket => pocket.Amount), 1e-4 * alone.Pockets.Sum(static pocket => pocket.Amount));
        for (int node = 0; node < along.Arrival.Length; node++)
        {
            if (!double.IsFinite(alone.Arrival[node])) along.Arrival[node].ShouldBe(alone.Arrival[node]);
            else along.Arrival[node].ShouldBe(alone.Arrival[node], 1e-3 * alone.FillClock);
        }

        double end = along.Stretches[^1].End;
        for (int moment = 1; moment <= 10; moment++) along.StateAt(end * moment / 10).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Track_CutBeforeGasHasOpenedPlacesAgain_KnowsWhenTheyWereFilled()
    {
        FrontTrack track = new(FillProblemBuilder.Build(ClampedStrip.Panel()));
        (track.Arrival[3], track.Full[3]) = (10, 12);
        track.Open(3, 0.2, 20);

        track.Until(30).Arrival[3].ShouldBe(double.PositiveInfinity);
        (track.Until(15).Arrival[3], track.Until(15).Full[3]).ShouldBe((10, 12));
        (track.Until(11).Arrival[3], track.Until(11).Full[3]).ShouldBe((10, double.PositiveInfinity));
    }

    private static Panel Turned()
    {
        Panel panel = ClampedStrip.Panel();
        double minute = ClampedStrip.ClockTo(0.3) / ClampedStrip.Rate;
        return panel with
        {
            TimingMarks = [new TimingMark("M1", new Point2(0.1, ClampedStrip.Width / 2))],
            Feeds = [.. panel.Feeds, new Feed("F2", ClampedStrip.Across(0.05), 0.012).Turned(0, new ClampStep(new WhenReached("M1"), 1))],
            Vents = [panel.Vents[0].Turned(1, new ClampStep(new AtTime(minute), 0))],
        };
    }

    private static FillConditions At(double faster) => new(ClampRules.Of(Turned(), Bag, (time, _) => time * ClampedStrip.Rate * faster), Bag);
}

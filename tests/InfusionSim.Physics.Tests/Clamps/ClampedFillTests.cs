using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Clamps;

public sealed class ClampedFillTests
{
    private static readonly double Full = ClampedStrip.ClockTo(ClampedStrip.Length);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.37)]
    [InlineData(0.9)]
    public void Clamp_ShutAndOpenedAtTheSameInstant_ChangesNothing(double share)
    {
        Panel panel = ClampedStrip.Panel();
        AtTime then = new(share * Full / ClampedStrip.Rate);
        Panel turned = panel with { Feeds = [panel.Feeds[0].Turned(1, new(then, 0), new(then, 1))] };
        ShouldBeTheSame(ClampedStrip.Fill(turned), ClampedStrip.Fill(panel));
    }

    [Fact]
    public void Clamp_OpenedAgainAndAgain_ChangesNothing()
    {
        Panel panel = ClampedStrip.Panel();
        ClampStep[] steps = [.. Enumerable.Range(1, 6).Select(k => new ClampStep(new AtTime(k * 0.15 * Full / ClampedStrip.Rate), 1))];
        Panel turned = panel with { Feeds = [panel.Feeds[0].Turned(1, [.. steps, new(new WhenFull(), 0)])] };
        ShouldBeTheSame(ClampedStrip.Fill(turned), ClampedStrip.Fill(panel));
    }

    [Fact]
    public void Feed_ShutForAWhile_ArrivesLaterByThatWhile()
    {
        Panel panel = ClampedStrip.Panel();
        double from = 0.4 * Full, until = 0.9 * Full;
        Panel turned = panel with
        {
            Feeds = [panel.Feeds[0].Turned(1, new(new AtTime(from / ClampedStrip.Rate), 0), new(new AtTime(until / ClampedStrip.Rate), 1))],
        };
        FillMap map = ClampedStrip.Fill(turned);
        map.FillClock.ShouldBe(Full + until - from, 1e-8 * Full);
        map.StateAt(0.7 * Full).FilledFraction.ShouldBe(map.StateAt(0.4 * Full).FilledFraction, 1e-12);
        map.StateAt(0.7 * Full).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void SecondFeed_OpenedWhenTheFrontReachesIt_FeedsFromThere()
    {
        // One front up to the second feed, then a new straight front from there: t = φμ (a² + (L − a)²)/(2KΔp).
        const double At = 0.2;
        Panel panel = ClampedStrip.Panel();
        Panel turned = panel with
        {
            Feeds = [panel.Feeds[0], new Feed("F2", ClampedStrip.Across(At), 0.012).Turned(0, new ClampStep(new WhenReached("M1"), 1))],
            TimingMarks = [new TimingMark("M1", new(At, ClampedStrip.Width / 2))],
        };
        FillMap map = ClampedStrip.Fill(turned);
        double expected = ClampedStrip.ClockTo(At) + ClampedStrip.ClockTo(ClampedStrip.Length - At);
        map.FillClock.ShouldBe(expected, 1e-3 * expected);
        ClampTurn turn = map.Turns.ShouldHaveSingleItem();
        turn.Clock.ShouldBe(ClampedStrip.ClockTo(At), 1e-3 * expected);
        map.StateAt(map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Vent_ShutWhenReached_TakesNoMoreResin()
    {
        Panel panel = ClampedStrip.Panel();
        Panel turned = panel with { Vents = [panel.Vents[0].Turned(1, new ClampStep(new WhenReached("V1"), 0))] };
        FillMap map = ClampedStrip.Fill(turned);
        map.FillClock.ShouldBe(Full, 1e-8 * Full);
        map.StateAt(2 * Full).ResinOut[0].ShouldBe(0, 1e-11);
        ClampedStrip.Fill(panel).StateAt(2 * Full).ResinOut[0].ShouldBeGreaterThan(1e-6);
    }

    [Fact]
    public void Feeds_AllShut_LeaveTheRestDry()
    {
        Panel panel = ClampedStrip.Panel();
        Panel turned = panel with { Feeds = [panel.Feeds[0].Turned(1, new ClampStep(new AtTime(Full / 4 / ClampedStrip.Rate), 0))] };
        FillMap map = ClampedStrip.Fill(turned);
        map.StateAt(Full).FilledFraction.ShouldBe(0.5, 1e-6);
        map.Total.Fills.Count(static fills => !fills).ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Feed_ThrottledOnItsHose_RunsAsThroughALongerHose()
    {
        Panel panel = ClampedStrip.Panel();
        Hose hose = new(0.002, 1, IsPrimed: true), twice = hose with { Length = 2 };
        Panel throttled = panel with { Feeds = [(panel.Feeds[0] with { Hose = hose }).Turned(0.5)] };
        Panel longer = panel with { Feeds = [panel.Feeds[0] with { Hose = twice }] };
        ClampedStrip.Fill(throttled).FillClock.ShouldBe(ClampedStrip.Fill(longer).FillClock, 1e-7 * Full);
        ClampedStrip.Fill(longer).FillClock.ShouldBeGreaterThan(Full * 1.01);
    }

    [Fact]
    public void Rules_ThatWaitForAMark_ActAtTheSameClockForEveryResin()
    {
        Panel panel = ClampedStrip.Panel();
        Panel turned = panel with
        {
            Vents = [panel.Vents[0].Turned(1, new ClampStep(new WhenReached("M1"), 0))],
            TimingMarks = [new TimingMark("M1", new(0.3, 0.01))],
        };
        FillMap map = ClampedStrip.Fill(turned);
        map.Turns.ShouldHaveSingleItem().Clock.ShouldBe(ClampedStrip.ClockTo(0.3), 1e-3 * Full);
        map.FillClock.ShouldBe(Full, 1e-8 * Full);
    }

    private static void ShouldBeTheSame(FillMap map, FillMap plain)
    {
        map.FillClock.ShouldBe(plain.FillClock, 1e-9 * plain.FillClock);
        foreach (double share in (double[])[0.05, 0.3, 0.6, 0.95, 1])
        {
            FillState state = map.StateAt(share * plain.FillClock), expected = plain.StateAt(share * plain.FillClock);
            state.FilledFraction.ShouldBe(expected.FilledFraction, 1e-9);
            state.ResinIn[0].ShouldBe(expected.ResinIn[0], 1e-9 * expected.ResinIn[0]);
            state.MassBalanceError.ShouldBeLessThan(1e-9);
            for (int node = 0; node < state.Saturation.Length; node++) state.Saturation[node].ShouldBe(
                node < expected.Saturation.Length ? expected.Saturation[node] : 0, 2e-8);
        }
    }
}

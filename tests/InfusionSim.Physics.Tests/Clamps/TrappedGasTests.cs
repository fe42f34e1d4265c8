using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Clamps;

public sealed class TrappedGasTests
{
    private const double Exact = 1e-9;
    private static readonly Bag Bag = new(5e3, 1e5);

    [Fact]
    public void Gas_SealedAtTheEndOfAStrip_KeepsItsAmount()
    {
        Panel panel = ClampedStrip.Panel() with { Vents = [] };
        FillMap map = ClampedStrip.Fill(panel, Bag);
        GasPocket pocket = map.Pockets.ShouldHaveSingleItem();
        double pores = map.Problem.PoreVolume.Sum();
        pocket.Amount.ShouldBe(5e3 * pores, Exact * 5e3 * pores);
        double gas = GasOf(map, map.Stretches[^1].End);
        gas.ShouldBe(pores * 5e3 / 1e5, 5e-3 * pores * 5e3 / 1e5);
        ShouldBalance(map);
    }

    [Fact]
    public void Pocket_BetweenTwoFeeds_OpensAgainWhenTheyAreShutAndTheVentIsOpen()
    {
        // The vent line across the strip is shut when reached, which seals what lies behind it; when the gas is at rest the feeds are shut and
        // another vent is opened.
        Panel panel = ClampedStrip.Panel();
        Panel turned = panel with
        {
            Feeds = [panel.Feeds[0].Turned(1, new ClampStep(new WhenFull(), 0)), new Feed("F2", ClampedStrip.Across(0.5), 0.012).Turned(1, new ClampStep(new WhenFull(), 0))],
            Vents = [new Vent("V1", ClampedStrip.Across(0.1), 0.012, VentKind.Tube).Turned(1, new ClampStep(new WhenReached("V1"), 0)), new Vent("V2", ClampedStrip.Across(0.05), 0.012, VentKind.Tube).Turned(0, new ClampStep(new WhenFull(), 1))],
        };
        FillMap map = ClampedStrip.Fill(turned, Bag);
        GasPocket pocket = map.Pockets.ShouldHaveSingleItem();
        double sealedGas = GasOf(map, map.Turns[0].Clock), pressed = GasOf(map, map.Turns[1].Clock), opened = GasOf(map, map.Stretches[^1].End);
        double sealedIn = sealedGas + map.Problem.PoreVolume[map.Problem.Network.ShutVents[0]];
        pocket.Amount.ShouldBe(5e3 * sealedIn, Exact * pocket.Amount);
        pressed.ShouldBe(sealedGas * 5e3 / 1e5, 0.01 * pressed);
        opened.ShouldBe(pocket.Amount / 5e3, 0.01 * opened);
        FillState before = map.StateAt(map.Turns[1].Clock), after = map.StateAt(map.Stretches[^1].End);
        double inLines = Enumerable.Range(map.Problem.Operator.CellCount, map.Problem.Operator.LineNodes).Sum(
            node => map.Problem.PoreVolume[node] * (before.Saturation[node] - after.Saturation[node]));
        (after.ResinOut[1] - before.ResinOut[1]).ShouldBe(opened - pressed + inLines, 1e-9 * map.Problem.PoreVolume.Sum());
        // It was full when the feeds were shut; what opens again afterwards does not make it later.
        map.FillClock.ShouldBeLessThanOrEqualTo(map.Turns[1].Clock);
        map.FillClock.ShouldBeGreaterThan(map.Turns[0].Clock);
        ShouldBalance(map);
    }

    [Theory]
    [InlineData(2e3)]
    [InlineData(0)]
    public void Pocket_UnderAVacuumThatIsDeepened_OpensFurther(double deeper)
    {
        // A vent line across the strip is shut when reached; what is sealed in behind it opens again when the feeds are shut, and further under less pressure. In a perfect
        // vacuum it opens until it finds the vent.
        Panel panel = ClampedStrip.Panel();
        double minute = 20 * ClampedStrip.ClockTo(0.5) / ClampedStrip.Rate;
        Panel turned = panel with
        {
            Feeds = [panel.Feeds[0].Turned(1, new ClampStep(new WhenFull(), 0)), new Feed("F2", ClampedStrip.Across(0.5), 0.012).Turned(1, new ClampStep(new WhenFull(), 0))],
            Vents =
            [
                new Vent("V1", ClampedStrip.Across(0.2), 0.012, VentKind.Tube).Turned(1, new ClampStep(new WhenReached("V1"), 0)),
                new Vent("V2", ClampedStrip.Across(0.05), 0.012, VentKind.Tube).Turned(0, new ClampStep(new WhenFull(), 1)),
            ],
        };
        FillMap map = ClampedStrip.Fill(turned, Bag with { Steps = [new BagStep(new AtTime(minute), deeper)] });
        map.BagTurns.ShouldHaveSingleItem().Clock.ShouldBe(minute * ClampedStrip.Rate, 1e-9 * minute * ClampedStrip.Rate);
        GasPocket[] pockets = [.. map.Stretches.SelectMany(static stretch => stretch.Pockets)];
        double amount = pockets[0].Amount, opened = GasOf(map, map.BagTurns[0].Clock);
        foreach (GasPocket pocket in pockets) pocket.Amount.ShouldBe(amount, Exact * amount);
        opened.ShouldBe(amount / 5e3, 0.01 * opened);
        if (deeper > 0) GasOf(map, map.Stretches[^1].End).ShouldBe(amount / deeper, 0.01 * amount / deeper);
        else map.Pockets.ShouldBeEmpty();
        ShouldBalance(map);
    }

    [Fact]
    public void Clamp_DueLongAfterAllIsAtRest_IsWaitedForInOneStep()
    {
        Panel panel = ClampedStrip.Panel() with { Vents = [] };
        int steps = ClampedStrip.Fill(panel, Bag).Stretches.Count;
        double minute = 1000 * ClampedStrip.ClockTo(0.5) / ClampedStrip.Rate;
        Panel turned = panel with { Vents = [ClampedStrip.Panel().Vents[0].Turned(0, new ClampStep(new AtTime(minute), 1))] };
        FillMap map = ClampedStrip.Fill(turned, Bag);
        map.Turns.ShouldHaveSingleItem().Clock.ShouldBe(minute * ClampedStrip.Rate, 1e-9 * minute * ClampedStrip.Rate);
        map.Stretches.Count(stretch => stretch.End <= map.Turns[0].Clock).ShouldBeLessThan(steps + 5);
        map.Pockets.ShouldBeEmpty();
        ShouldBalance(map);
    }

    [Fact]
    public void Pocket_WithAVentInside_IsFreedWhenThatOpens()
    {
        Panel panel = ClampedStrip.Panel();
        double minute = ClampedStrip.ClockTo(0.47) / ClampedStrip.Rate;
        Panel turned = panel with { Vents = [panel.Vents[0].Turned(0, new ClampStep(new AtTime(minute), 1))] };
        FillMap map = ClampedStrip.Fill(turned, Bag);
        map.Pockets.ShouldBeEmpty();
        map.FollowsGas.ShouldBeTrue();
        map.StateAt(map.FillClock).FilledFraction.ShouldBe(1, 1e-9);
        map.FillClock.ShouldBeGreaterThan(ClampedStrip.ClockTo(0.5));
        ShouldBalance(map);
    }

    [Fact]
    public void Pocket_WithANeck_ComesApart()
    {
        Panel panel = Dumbbell(out _);
        FillMap map = ClampedStrip.Fill(panel, Bag);
        map.Pockets.Count.ShouldBeGreaterThanOrEqualTo(2);
        double pores = map.Problem.PoreVolume.Sum();
        map.Pockets.Sum(static pocket => pocket.Amount).ShouldBe(5e3 * pores, Exact * 5e3 * pores);
        ShouldBalance(map);
    }

    [Fact]
    public void Pockets_ThatOpenTowardsEachOther_Merge()
    {
        Panel panel = Dumbbell(out LinePath middle);
        Panel turned = panel with
        {
            Feeds = [.. panel.Feeds.Select(static feed => feed.Turned(1, new ClampStep(new WhenFull(), 0)))],
            Vents = [new Vent("V1", middle, 0.006, VentKind.Tube).Turned(0, new ClampStep(new WhenFull(), 1))],
        };
        FillMap map = ClampedStrip.Fill(turned, Bag);
        double pores = map.Problem.PoreVolume.Sum();
        IReadOnlyList<GasPocket>[] stretches = [.. map.Stretches.Select(static stretch => stretch.Pockets)];
        int merged = Enumerable.Range(1, stretches.Length - 1).First(k => stretches[k].Count < stretches[k - 1].Count && stretches[k].Count > 0);
        stretches[merged - 1].Count.ShouldBeGreaterThanOrEqualTo(2);
        double amount = stretches[0].Sum(static pocket => pocket.Amount);
        amount.ShouldBe(5e3 * pores, 1e-6 * amount);
        stretches[merged].Sum(static pocket => pocket.Amount).ShouldBe(amount, Exact * amount);
        ShouldBalance(map);
    }

    [Fact]
    public void Pocket_WithALeak_GainsWhatLeaksIn()
    {
        // The whole strip is one pocket: at time t it holds p₀ V + Q t.
        Panel panel = ClampedStrip.Panel() with { Vents = [] };
        const double Throughput = 2e-6, Gel = 1500;
        FillMap map = FillMap.Compute(
            FillProblemBuilder.Build(panel),
            new FillConditions(Bag: Bag, Leak: _ => new PocketLeak(Throughput, static clock => clock / ClampedStrip.Rate, Gel * ClampedStrip.Rate)));
        double time = map.Stretches[^1].End / ClampedStrip.Rate, expected = 5e3 * map.Problem.PoreVolume.Sum() + Throughput * time;
        map.Pockets.ShouldHaveSingleItem().Amount.ShouldBe(expected, Exact * expected);
        time.ShouldBeLessThanOrEqualTo(Gel);

        FillMap tight = ClampedStrip.Fill(panel, Bag);
        GasOf(map, map.Stretches[^1].End).ShouldBeGreaterThan(GasOf(tight, map.Stretches[^1].End));
        ShouldBalance(map);
    }

    [Fact]
    public void Forecast_InAPerfectVacuum_TrapsNothing()
    {
        FillMap map = ClampedStrip.Fill(ClampedStrip.Panel() with { Vents = [] }, new Bag(0, 1e5));
        map.Pockets.ShouldBeEmpty();
        map.FillClock.ShouldBe(ClampedStrip.ClockTo(0.5), 1e-9 * map.FillClock);
    }

    private static Panel Dumbbell(out LinePath middle)
    {
        // Two bays joined by a neck, fed in the middle of the neck from its side: the bays are sealed together at first and come apart when the resin
        // has crossed the neck.
        Ring outline = new([
            new(0, 0), new(0.1, 0), new(0.1, 0.04), new(0.2, 0.04), new(0.2, 0), new(0.26, 0),
            new(0.26, 0.1), new(0.2, 0.1), new(0.2, 0.06), new(0.1, 0.06), new(0.1, 0.1), new(0, 0.1)]);
        middle = new LinePath([new(0.145, 0.06), new(0.155, 0.06)]);
        return new Panel(
            new Region(outline, []),
            [new Zone("skin", null, 3e-3, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0))],
            [new Feed("F1", new LinePath([new(0.14, 0.04), new(0.16, 0.04)]), 0.006)],
            [],
            [],
            4e-3);
    }

    private static double GasOf(FillMap map, double clock)
    {
        FillState state = map.StateAt(clock);
        return Enumerable.Range(0, map.Problem.Operator.CellCount).Sum(cell => map.Problem.PoreVolume[cell] * (1 - state.Saturation[cell]));
    }

    private static void ShouldBalance(FillMap map)
    {
        foreach (FillStretch stretch in map.Stretches) map.StateAt(stretch.End).MassBalanceError.ShouldBeLessThan(Exact);
    }
}

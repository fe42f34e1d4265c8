using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Clamps;

public sealed class ClampedSlopeTests
{
    private const double Rate = 5e5;
    private static readonly Bag Bag = new(1325, 101325);
    private static readonly Slope Upright = new(Math.PI / 2, Math.PI / 2);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.6)]
    public void Clamp_ShutAndOpenedAtTheSameInstant_ChangesNothing(double share)
    {
        Panel panel = Wall();
        FillMap plain = Fill(panel);
        AtTime then = new(share * plain.FillClock / Rate);
        FillMap turned = Fill(panel with { Feeds = [panel.Feeds[0].Turned(1, new(then, 0), new(then, 1))] });
        turned.Turns.Count.ShouldBe(2);
        ShouldBeTheSame(turned, plain, 1e-9);
    }

    [Fact]
    public void Vacuum_SetToWhatItIs_ChangesNothing()
    {
        FillMap plain = Fill(Wall());
        ShouldBeTheSame(Fill(Wall(), Bag with { Steps = [new BagStep(new AtTime(plain.FillClock / 3 / Rate), Bag.Pressure)] }), plain, 1e-9);
    }

    [Fact]
    public void MembraneVent_ShutOnTheWay_BeginsAnewWithWhatEachPlaceHolds()
    {
        // A membrane passes no resin, so nothing changes but that the march begins anew: what differs is the error of its steps,
        // and where rows fill evenly there is none.
        Panel panel = Wall(VentKind.Membrane);
        FillMap plain = Fill(panel);
        foreach (double share in (double[])[0.05, 0.3, 0.8])
        {
            FillMap turned = Fill(panel with { Vents = [panel.Vents[0].Turned(1, new ClampStep(new AtTime(share * plain.FillClock / Rate), 0))] });
            turned.Stretches.Count.ShouldBe(2);
            TestContext.Current.TestOutputHelper?.WriteLine($"{share}: {turned.FillClock / plain.FillClock - 1:E2}");
            ShouldBeTheSame(turned, plain, 1e-8);
        }
    }

    [Fact]
    public void MembraneVent_ShutOnTheWay_OnAPanelAskew_MovesTheFillNoFurtherThanTheStepsDo()
    {
        // Here full clocks are estimates, and the march takes other steps once it has begun anew. Tolerance 0.1 %, as against the fill from cell to cell.
        Panel panel = Wall(VentKind.Membrane) with { Feeds = [new Feed("F", TestPanels.Path((0, 0.1), (0, 0.4)), 0.012)], Slope = new Slope(1.1, 0.9) };
        FillMap plain = Fill(panel, perMetre: 0.6);
        foreach (double share in (double[])[0.05, 0.3, 0.8])
        {
            ClampStep shut = new(new AtTime(share * plain.FillClock / Rate), 0);
            FillMap turned = Fill(panel with { Vents = [panel.Vents[0].Turned(1, shut)] }, perMetre: 0.6);
            turned.Stretches.Count.ShouldBe(2);
            TestContext.Current.TestOutputHelper?.WriteLine($"{share}: {turned.FillClock / plain.FillClock - 1:E2}");
            ShouldBeTheSame(turned, plain, 1e-3);
        }
    }

    [Fact]
    public void Slope_OfAHair_IsTheLevelPanel()
    {
        // Tolerance 1e-5: the slope takes 1e-8 of the drive.
        Panel turned = SecondFeedAtAMark(Wall());
        FillMap level = Fill(turned with { Slope = null }, perMetre: 0.3), tilted = Fill(turned with { Slope = new Slope(0.7, 1e-7) }, perMetre: 0.3);
        level.Problem.Heads.ShouldBeNull();
        tilted.Problem.Heads.ShouldNotBeNull();
        ShouldBeTheSame(tilted, level, 1e-5);
    }

    [Fact]
    public void Slope_Mirrored_MirrorsTheFill()
    {
        Panel left = SecondFeedAtAMark(Wall() with { Slope = new Slope(0.3, 1) });
        Panel right = SecondFeedAtAMark(Wall() with { Slope = new Slope(Math.PI - 0.3, 1) }, mirrored: true);
        FillMap map = Fill(left), mirrored = Fill(right);
        mirrored.FillClock.ShouldBe(map.FillClock, 1e-6 * map.FillClock);
        mirrored.Turns[0].Clock.ShouldBe(map.Turns[0].Clock, 1e-6 * map.FillClock);
        int columns = map.Problem.Operator.Columns, rows = map.Problem.Operator.Rows;
        for (int cell = 0; cell < columns * rows; cell++)
            mirrored.Arrival[cell / columns * columns + columns - 1 - cell % columns].ShouldBe(map.Arrival[cell], 1e-3 * map.FillClock);
    }

    [Fact]
    public void SecondFeed_OpenedWhenTheFrontReachesIt_QuickensTheRest()
    {
        FillMap plain = Fill(Wall()), map = Fill(SecondFeedAtAMark(Wall()));
        map.Turns.ShouldHaveSingleItem().Clock.ShouldBe(plain.ArrivalAt(new(0.0875, 0.2625)), 1e-2 * plain.FillClock);
        map.FillClock.ShouldBeLessThan(0.8 * plain.FillClock);
        map.StateAt(map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Vent_ShutWhenReached_TakesNoMoreResin()
    {
        Panel panel = Wall();
        FillMap map = Fill(panel with { Vents = [panel.Vents[0].Turned(1, new ClampStep(new WhenReached("V"), 0))] }), plain = Fill(panel);
        map.FillClock.ShouldBe(plain.FillClock, 1e-3 * plain.FillClock);
        map.StateAt(2 * map.FillClock).ResinOut[0].ShouldBeLessThan(1e-2 * plain.StateAt(2 * map.FillClock).ResinOut[0]);
        map.StateAt(2 * map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Vent_ShutWhenReached_KeepsResinFromRunningBack()
    {
        // Left open the vent far below the front drinks so much that the pressure above it falls below that under the bag.
        Panel open = new(
            new(TestPanels.Rectangle(0, 0, 1, 1), []),
            [TestPanels.Cloth],
            [new Feed("F", TestPanels.Path((0.5, 0.5)), 0.012)],
            [new Vent("V", TestPanels.Path((0, 0.3), (1, 0.3)), 0.012, VentKind.Tube)],
            [],
            0.05)
        {
            Slope = Upright,
        };
        Should.Throw<ResinRunsBackException>(() => Fill(open, perMetre: 0.7));
        FillMap map = Fill(open with { Vents = [open.Vents[0].Turned(1, new ClampStep(new WhenReached("V"), 0))] }, perMetre: 0.7);
        map.Total.Fills.Count(static fills => fills).ShouldBeGreaterThanOrEqualTo(400);
        map.StateAt(map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Feed_ShutWhenFullWithTheVentAtTheTop_LeavesAllAtRest()
    {
        Panel panel = Wall();
        FillMap map = Fill(panel with { Feeds = [panel.Feeds[0].Turned(1, new ClampStep(new WhenFull(), 0))] });
        map.StateAt(2 * map.FillClock).FilledFraction.ShouldBe(1, 1e-9);
        map.StateAt(2 * map.FillClock).ResinOut[0].ShouldBe(map.StateAt(map.FillClock).ResinOut[0], 1e-9);

        // At rest the pressure grows by 0.3 per metre downwards from the vent.
        map.Total.SteadyPressure[map.Problem.Operator.Columns / 2].ShouldBe(0.3 * (0.4875 - 0.0125), 1e-9);
    }

    [Fact]
    public void Lines_AllShut_LeaveAllAtRest()
    {
        Panel panel = Wall();
        FillMap map = Fill(panel with
        {
            Feeds = [panel.Feeds[0].Turned(1, new ClampStep(new WhenFull(), 0))],
            Vents = [panel.Vents[0].Turned(1, new ClampStep(new WhenReached("V"), 0))],
        });
        map.Turns.Count.ShouldBe(2);
        map.StateAt(2 * map.FillClock).FilledFraction.ShouldBe(1, 1e-6);
        map.StateAt(2 * map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Feed_ShutWhenFullWithTheVentAtTheBottom_IsRefusedByName()
    {
        Panel panel = Wall() with
        {
            Feeds = [new Feed("F", TestPanels.Path((0, 0.5), (0.2, 0.5)), 0.012).Turned(1, new ClampStep(new WhenFull(), 0))],
            Vents = [new Vent("V", TestPanels.Path((0, 0), (0.2, 0)), 0.012, VentKind.Tube)],
        };
        ResinRunsBackException refused = Should.Throw<ResinRunsBackException>(() => Fill(panel));
        refused.Place!.Value.Y.ShouldBeGreaterThan(0.45);
    }

    [Fact]
    public void Feed_ShutForAWhile_ArrivesLaterByThatWhile()
    {
        Panel panel = Wall();
        FillMap plain = Fill(panel);
        double from = 0.4 * plain.FillClock, until = 0.9 * plain.FillClock;
        FillMap map = Fill(panel with { Feeds = [panel.Feeds[0].Turned(1, new(new AtTime(from / Rate), 0), new(new AtTime(until / Rate), 1))] });

        // Tolerance 0.1 %: the march begins anew.
        map.FillClock.ShouldBe(plain.FillClock + until - from, 1e-3 * plain.FillClock);
        map.StateAt(0.7 * plain.FillClock).FilledFraction.ShouldBe(map.StateAt(0.4 * plain.FillClock).FilledFraction, 1e-12);
        map.StateAt(map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    [Fact]
    public void Air_BehindAVentThatIsShut_StaysUntilAnotherOpens()
    {
        // The only vent is shut at a third of the fill: what is dry then is sealed. One that opens in it later frees it.
        Panel panel = Wall(VentKind.Membrane);
        double third = Fill(panel).FillClock / 3;
        Panel shut = panel with { Vents = [panel.Vents[0].Turned(1, new ClampStep(new AtTime(third / Rate), 0))] };
        Vent later = new Vent("W", TestPanels.Path((0.1, 0.5)), 0.012, VentKind.Membrane).Turned(0, new ClampStep(new AtTime(1.5 * third / Rate), 1));

        PocketFinder.Find(Fill(panel)).ShouldBeEmpty();
        FillMap map = Fill(shut);
        Pocket pocket = PocketFinder.Find(map).ShouldHaveSingleItem();
        pocket.SealedClock.ShouldBe(third, 1e-9 * third);
        pocket.Cells.Count.ShouldBe(map.Arrival.Count(arrival => arrival > third));
        PocketFinder.Find(Fill(shut with { Vents = [.. shut.Vents, later] })).ShouldBeEmpty();
        DrySpotFinder.Find(map, Bag).ShouldHaveSingleItem().GasVolume.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Vacuum_ChangedOnTheWay_ChangesTheShareOfTheWeight()
    {
        // Half the drive makes the weight count twice: the height of rest comes down from above the wall to half of it.
        Panel panel = Wall();
        FillMap plain = Fill(panel, perMetre: 1.2);
        Bag weaker = Bag with { Steps = [new BagStep(new AtTime(plain.FillClock / 20 / Rate), Bag.Ambient - 0.3 * (Bag.Ambient - Bag.Pressure))] };
        FillMap map = Fill(panel, weaker, perMetre: 1.2);
        plain.Total.Fills.ShouldAllBe(static fills => fills);

        // 1 / (1.2 / 0.3) = 0.25 m; squares of 25 mm.
        double top = Enumerable.Range(0, map.Total.Fills.Length).Where(node => map.Total.Fills[node]).Max(node => map.Problem.Cells.CentroidY[node]);
        top.ShouldBeInRange(0.2, 0.25);
        map.StateAt(map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
    }

    private static FillMap Fill(Panel panel, Bag? bag = null, double perMetre = 0.3)
    {
        FillProblem problem = TiltedPanel.Of(FillProblemBuilder.Build(panel), new GravityHead(perMetre));
        return FillMap.Compute(problem, new FillConditions(ClampRules.Of(panel, bag ?? Bag, static (time, _) => time * Rate), bag ?? Bag));
    }

    private static Panel Wall(VentKind kind = VentKind.Tube) => new(
        new(TestPanels.Rectangle(0, 0, 0.2, 0.5), []),
        [TestPanels.Cloth],
        [new Feed("F", TestPanels.Path((0, 0), (0.2, 0)), 0.012)],
        [new Vent("V", TestPanels.Path((0, 0.5), (0.2, 0.5)), 0.012, kind)],
        [],
        0.025)
    {
        Slope = Upright,
    };

    private static Panel SecondFeedAtAMark(Panel panel, bool mirrored = false)
    {
        double Across(double x) => mirrored ? 0.2 - x : x;
        Feed second = new("F2", TestPanels.Path((Across(0.05), 0.2375), (Across(0.15), 0.2375)), 0.012);
        return panel with
        {
            Feeds = [panel.Feeds[0], second.Turned(0, new ClampStep(new WhenReached("M"), 1))],
            TimingMarks = [new TimingMark("M", new(Across(0.0875), 0.2625))],
        };
    }

    private static void ShouldBeTheSame(FillMap map, FillMap plain, double tolerance)
    {
        map.FillClock.ShouldBe(plain.FillClock, tolerance * plain.FillClock);
        foreach (double share in (double[])[0.05, 0.3, 0.6, 0.95, 1])
        {
            FillState state = map.StateAt(share * plain.FillClock), expected = plain.StateAt(share * plain.FillClock);
            state.FilledFraction.ShouldBe(expected.FilledFraction, tolerance);
            state.ResinIn[0].ShouldBe(expected.ResinIn[0], tolerance * expected.ResinIn[0]);
            state.MassBalanceError.ShouldBeLessThan(1e-9);
        }
    }
}

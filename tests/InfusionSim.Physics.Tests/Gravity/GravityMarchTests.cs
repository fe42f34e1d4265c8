using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Gravity;

public class GravityMarchTests
{
    private static readonly int[] Intervals = [24, 48, 96];
    private static readonly double[] Shares = [0.3, 0.9, 0.1, 0.5, 0.3];

    public enum Layout
    {
        SideFeed,
        FittingBelow,
        FromTheTop,
        OpenVent,
        Askew,
    }

    [Theory]
    [InlineData(Layout.SideFeed, 0.3)]
    [InlineData(Layout.FittingBelow, 0.3)]
    [InlineData(Layout.FromTheTop, 0.3)]
    [InlineData(Layout.OpenVent, 0.3)]
    [InlineData(Layout.Askew, 0.6)]
    public void Run_AgainstCellByCell_FindsTheSameFullClocks(Layout layout, double perMetre)
    {
        // Case: 0.6 × 0.5 m upright, 12 × 10 cells; weight takes 15 to 30 % of the drive over the height, three to six times what it takes in a shop.
        FillProblem problem = Upright(layout, perMetre);
        double[] expected = CellByCell.FullClocks(problem);
        double end = expected.Where(double.IsFinite).Max();
        double[] errors = [.. Intervals.Select(moments =>
        {
            GravityFill fill = GravityMarch.Run(problem, moments, null, default);
            fill.Total.Fills.ShouldBe([.. expected.Select(double.IsFinite)]);
            return Math.Abs(fill.Total.Clock - end) / end;
        })];
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{layout}: fill clock off by {errors[0]:E1}, {errors[1]:E1}, {errors[2]:E1} with 24, 48, 96 intervals");

        // Tolerance 0.1 % with 48 intervals, a fifth of what a closed form is asked for; more intervals bring no worse.
        errors[1].ShouldBeLessThan(1e-3);
        errors[2].ShouldBeLessThan(Math.Max(errors[0], 1e-4));
    }

    [Theory]
    [InlineData(Layout.SideFeed)]
    [InlineData(Layout.Askew)]
    public void StateAt_InAnyOrder_IsTheSameAndLosesNothing(Layout layout)
    {
        FillMap map = FillMap.Compute(Upright(layout, 0.5));
        double[] clocks = [.. Shares.Select(share => share * map.FillClock)];
        FillState[] states = [.. clocks.Select(clock => map.StateAt(clock))];

        states.ShouldAllBe(state => state.MassBalanceError < 1e-9);
        for (int cell = 0; cell < states[0].Saturation.Length; cell++) states[4].Saturation[cell].ShouldBe(states[0].Saturation[cell], 1e-7);
        states[1].FilledFraction.ShouldBeGreaterThan(states[3].FilledFraction);
        states[3].FilledFraction.ShouldBeGreaterThan(states[0].FilledFraction);
    }

    [Fact]
    public void Run_WithTwoPotsAtDifferentLevels_ReachesAboveTheLowerOne()
    {
        // The lower pot alone lifts the resin by 0.4 m, the higher one to above the panel of 0.5 m.
        Panel panel = Panel(Layout.SideFeed) with
        {
            Feeds =
            [
                new Feed("low", TestPanels.Path((0, 0), (0.6, 0)), 0.012) { Pot = "low" },
                new Feed("high", TestPanels.Path((0, 0.5)), 0.02) { Pot = "high" },
            ],
            Pots = [new Pot("low", 0), new Pot("high", 0.1)],
        };
        GravityFill fill = GravityMarch.Run(TiltedPanel.Of(FillProblemBuilder.Build(panel), new GravityHead(2.5)), 48, null, default);
        double top = HeightOf(fill);

        top.ShouldBeGreaterThan(0.4);
        Enumerable.Range(0, fill.Climbed.Length).Count(node => fill.Climbed[node] && !fill.Total.Fills[node]).ShouldBe(0);
    }

    [Fact]
    public void Run_WithAWetVentFarBelowTheFront_RefusesByName()
    {
        // The vent along the bottom drinks so much of what a fitting gives that the pressure above falls below that under the bag: a full place would
        // run dry again.
        Panel panel = new(
            new Region(TestPanels.Rectangle(0, 0, 1, 1), []),
            [TestPanels.Cloth],
            [new Feed("F", TestPanels.Path((0.5, 0.5)), 0.012)],
            [new Vent("V", TestPanels.Path((0, 0.3), (1, 0.3)), 0.012, VentKind.Tube)],
            [],
            0.05)
        {
            Slope = new Slope(Math.PI / 2, Math.PI / 2),
        };
        FillProblem problem = TiltedPanel.Of(FillProblemBuilder.Build(panel), new GravityHead(1.2));

        ResinRunsBackException refused = Should.Throw<ResinRunsBackException>(() => GravityMarch.Run(problem, 48, null, default));
        refused.Message.ShouldContain("run back");
        refused.Place!.Value.Y.ShouldBeGreaterThan(0.5);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Compute_OfAPanelTiltedByAHair_IsThatOfTheLevelOne(bool withGap)
    {
        // The march and the solve without it share no step, so lines with a bore, hoses and gaps must come out the same both ways as the slope goes to 0.
        Panel level = Panel(Layout.SideFeed) with
        {
            Feeds = [new Feed("F", TestPanels.Path((0, 0), (0, 0.5)), 0.012) { Bore = 0.008, Hose = new Hose(0.008, 1.5) }],
            Vents = [TestPanels.Vent(TestPanels.Path((0.6, 0), (0.6, 0.5))) with { Hose = new Hose(0.008, 0.5) }],
            Gaps = withGap ? [new Gap("G", TestPanels.Path((0, 0.26), (0.4, 0.26)), 1e-3, null)] : [],
            Slope = null,
        };
        FillMap flat = FillMap.Compute(FillProblemBuilder.Build(level));
        FillMap tilted = FillMap.Compute(TiltedPanel.Of(FillProblemBuilder.Build(level with { Slope = new Slope(0.7, 1e-7) }), new GravityHead(0.3)));

        // Tolerance 1e-6: the slope takes 1e-8 of the drive.
        tilted.Problem.Heads.ShouldNotBeNull();
        tilted.FillClock.ShouldBe(flat.FillClock, 1e-6 * flat.FillClock);
        tilted.StateAt(0.4 * flat.FillClock).ResinIn[0].ShouldBe(
            flat.StateAt(0.4 * flat.FillClock).ResinIn[0], 1e-6 * flat.StateAt(0.4 * flat.FillClock).ResinIn[0]);
    }

    [Theory]
    [InlineData(-0.5, 0.4)]
    [InlineData(0.6, -1.2)]
    public void Compute_OfALevelPanelWithPotsAtOtherLevels_IsThatOfTheMarch(double first, double second)
    {
        // The march with heads of 0 and the solve without any share no step; hoses that fill first are part of both.
        Panel panel = Panel(Layout.SideFeed) with
        {
            Feeds =
            [
                new Feed("F1", TestPanels.Path((0, 0), (0, 0.5)), 0.012) { Bore = 0.008, Hose = new Hose(0.008, 1.5), Pot = "P1" },
                new Feed("F2", TestPanels.Path((0.6, 0), (0.6, 0.3)), 0.012) { Pot = "P2", Hose = new Hose(0.008, 1) },
            ],
            Vents = [TestPanels.Vent(TestPanels.Path((0.3, 0.5), (0.6, 0.5)))],
            Pots = [new Pot("P1", first), new Pot("P2", second)],
            Slope = null,
        };
        FillProblem lifted = TiltedPanel.Of(FillProblemBuilder.Build(panel), new GravityHead(0.3));
        lifted.Heads.ShouldBeNull();
        FillMap plain = FillMap.Compute(lifted), marched = FillMap.Compute(lifted with { Heads = new double[lifted.PoreVolume.Length] });

        // Tolerance 1e-8: full clocks do not count where no head differs, so that each state of the march is exact.
        marched.FillClock.ShouldBe(plain.FillClock, 1e-8 * plain.FillClock);
        foreach (double share in Shares)
        {
            FillState state = marched.StateAt(share * plain.FillClock), expected = plain.StateAt(share * plain.FillClock);
            for (int feed = 0; feed < 2; feed++) state.ResinIn[feed].ShouldBe(expected.ResinIn[feed], 1e-8 * expected.Drawn);
            state.FilledFraction.ShouldBe(expected.FilledFraction, 1e-8);
        }
    }

    [Fact]
    public void Compute_UprightWithHoseAndBore_LosesNothing()
    {
        Panel panel = Panel(Layout.SideFeed) with
        {
            Feeds = [new Feed("F", TestPanels.Path((0, 0), (0, 0.5)), 0.012) { Bore = 0.008, Hose = new Hose(0.008, 1.5), Pot = "pail" }],
            Pots = [new Pot("pail", -0.4)],
        };
        FillMap map = FillMap.Compute(TiltedPanel.Of(FillProblemBuilder.Build(panel), new GravityHead(0.3)));

        map.StateAt(map.FillClock).MassBalanceError.ShouldBeLessThan(1e-9);
        map.StateAt(map.FillClock / 2).MassBalanceError.ShouldBeLessThan(1e-9);
        map.Tallies.ShouldAllBe(tally => tally.MassBalanceError < 1e-6);
    }

    private static double HeightOf(GravityFill fill) =>
        Enumerable.Range(0, fill.Climbed.Length).Where(node => fill.Total.Fills[node]).Max(node => fill.Problem.Cells.CentroidY[node]);

    private static FillProblem Upright(Layout layout, double perMetre) => TiltedPanel.Of(FillProblemBuilder.Build(Panel(layout)), new GravityHead(perMetre));

    private static Panel Panel(Layout layout)
    {
        (LinePath feed, Vent vent) = layout switch
        {
            Layout.SideFeed => (TestPanels.Path((0, 0), (0, 0.5)), TestPanels.Vent(TestPanels.Path((0.6, 0), (0.6, 0.5)), VentKind.Membrane)),
            Layout.FittingBelow => (TestPanels.Path((0.26, 0.03)), TestPanels.Vent(TestPanels.Path((0, 0.5), (0.6, 0.5)), VentKind.Membrane)),
            Layout.FromTheTop => (TestPanels.Path((0, 0.5), (0.4, 0.5)), TestPanels.Vent(TestPanels.Path((0.2, 0), (0.6, 0)), VentKind.Tube)),
            Layout.OpenVent => (TestPanels.Path((0, 0), (0.3, 0)), TestPanels.Vent(TestPanels.Path((0.6, 0.3), (0.6, 0.5)), VentKind.Tube)),
            _ => (TestPanels.Path((0, 0.1), (0, 0.5)), TestPanels.Vent(TestPanels.Path((0.5, 0.02)), VentKind.Tube)),
        };
        Ring outline = layout == Layout.Askew
            ? new([new(0, 0), new(0.6, 0), new(0.6, 0.31), new(0.37, 0.5), new(0, 0.5)])
            : TestPanels.Rectangle(0, 0, 0.6, 0.5);
        return TestPanels.Panel(outline, 0.05, [TestPanels.Cloth], [TestPanels.Feed(feed)], vent) with
        {
            Slope = layout == Layout.Askew ? new Slope(1.1, 0.9) : new Slope(Math.PI / 2, Math.PI / 2),
        };
    }
}

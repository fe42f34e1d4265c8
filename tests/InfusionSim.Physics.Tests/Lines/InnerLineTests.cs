using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Lines;

public class InnerLineTests
{
    private const double Length = 0.5, Height = 0.01, CellSize = 0.01, Conductance = 3e-13;

    // Darcy's law between a feed line at x and an open vent on the right edge: K·thickness·height/(L − x).
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.2013)]
    [InlineData(0.2047)]
    [InlineData(0.2064)]
    [InlineData(0.2099)]
    public void FeedLine_AnywhereInAStrip_SteadyFlowIsExact(double x)
    {
        FillProblem problem = FillProblemBuilder.Build(StripFedAt(x, CellSize) with { Vents = [Vent(Path((Length, 0), (Length, Height)))] });

        RelativeError(TestSolver.SteadyFlow(problem), Conductance * Height / (Length - x)).ShouldBeLessThan(1e-12);
    }

    // The longer arm L − x = a fills at φa²/(2K). With its cells' unknowns a distance d from the line: φ (a² − h²/4 + d²)/(2K) (derived by summing the fluxes).
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.1013)]
    [InlineData(0.1047)]
    [InlineData(0.1064)]
    [InlineData(0.1099)]
    public void FeedLine_AnywhereInAStrip_FillClockIsThatOfTheLongerArmWithinASquaredCell(double x)
    {
        double arm = Length - x, d = (Math.Floor(x / CellSize - 0.5) + 1.5) * CellSize - x;

        double clock = TestSolver.FillClock(FillProblemBuilder.Build(StripFedAt(x, CellSize)));

        RelativeError(clock, 0.5 * (arm * arm - CellSize * CellSize / 4 + d * d) / 2e-10).ShouldBeLessThan(1e-12);
        RelativeError(clock, 0.5 * arm * arm / 2e-10).ShouldBeLessThan(CellSize * CellSize / (arm * arm));
    }

    [Fact]
    public void FeedLine_ThroughTheMiddlesOfARow_FeedsBothArmsAlike()
    {
        // An odd number of cells: the line in the middle of the strip runs through the middles of the middle cells.
        Panel panel = Panel(Rectangle(0, 0, 0.51, 0.03), CellSize, [Cloth], [Feed(Path((0.255, 0), (0.255, 0.03)))]);

        FillProblem problem = FillProblemBuilder.Build(panel);

        double[] clocks = TestSolver.Solve(problem.Operator, problem.PoreVolume);
        double exact = 0.5 * 0.255 * 0.255 / 2e-10;
        RelativeError(clocks[0], exact).ShouldBeLessThan(2e-3);
        RelativeError(clocks[50], exact).ShouldBeLessThan(2e-3);
        CutOff(problem.Operator, 51, 24).ShouldBeFalse();
        problem.PoreVolume.Sum().ShouldBe(0.51 * 0.03 * 1.5e-3, 1e-18);
    }

    // A vent inside a strip: the resin reaches it at φx²/(2K), where its own cell is full.
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.2013)]
    [InlineData(0.2047)]
    [InlineData(0.205)]
    [InlineData(0.2099)]
    public void TubeVent_AnywhereInAStrip_FrontReachesItOnTime(double x)
    {
        Panel panel = Strip(Length, Height, CellSize, Cloth) with { Vents = [Vent(Path((x, 0), (x, Height)))] };

        FillProblem problem = FillProblemBuilder.Build(panel);

        double[] clocks = TestSolver.Solve(problem.Operator, problem.PoreVolume), pressure = TestSolver.SteadyPressure(problem);
        int upstream = (int)Math.Floor(x / CellSize - 0.5 + 1e-9);
        double exact = 0.5 * x * x / 2e-10;
        RelativeError(clocks[upstream] / pressure[upstream], exact).ShouldBeLessThan(CellSize * CellSize / (x * x));
        problem.Vents[0].Contacts.ShouldAllBe(contact => contact.FullWhenWet);
        pressure[upstream + 1].ShouldBe(0, 1e-12);
    }

    [Fact]
    public void MembraneVent_Inside_CutsNothingAndTouchesTheCellItLiesIn()
    {
        Panel panel = Strip(Length, Height, CellSize, Cloth) with { Vents = [Vent(Path((0.2, 0), (0.2, Height)), VentKind.Membrane)] };
        Panel shifted = panel with { Vents = [Vent(Path((0.2047, 0), (0.2047, Height)), VentKind.Membrane)] };

        FillProblem onFace = FillProblemBuilder.Build(panel), inside = FillProblemBuilder.Build(shifted);

        onFace.Vents[0].Contacts.Select(contact => contact.Cell).ShouldBe([19, 20]);
        inside.Vents[0].Contacts.Select(contact => contact.Cell).ShouldBe([20]);
        inside.Vents[0].Contacts[0].FullWhenWet.ShouldBeFalse();
        inside.Operator.East.Take(49).ShouldAllBe(conductance => conductance > 0);
    }

    [Fact]
    public void FeedLine_BetweenTheLastMiddlesAndTheEdge_StillFeeds()
    {
        FillProblem problem = FillProblemBuilder.Build(StripFedAt(0.0022, CellSize));

        problem.Feeds[0].Contacts.Count.ShouldBe(1);
        RelativeError(problem.Feeds[0].Contacts[0].Conductance, Conductance * Height / 0.0028).ShouldBeLessThan(1e-4);
    }

    [Fact]
    public void FeedAndVent_CrossingTheSameWay_EachTouchTheNearerCell()
    {
        Panel panel = StripFedAt(0.203, CellSize) with { Vents = [Vent(Path((0.202, 0), (0.202, Height)))] };

        FillProblem problem = FillProblemBuilder.Build(panel);

        problem.Vents[0].Contacts.Select(contact => contact.Cell).ShouldBe([19]);
        problem.Feeds[0].Contacts.Select(contact => contact.Cell).ShouldBe([20]);
    }

    // Corners on a lattice of quarter cells meet middles, faces and corners of cells exactly.
    [Fact]
    public void FeedLine_ClosedLoopOfAnyShape_LeaksNowhere()
    {
        Gen<Point2> corner = Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9], (x, y) => new Point2(x * 0.0025, y * 0.0025));
        Gen.Select(corner, corner, corner, corner).Sample(corners =>
        {
            // One corner in each quadrant round the middle of the panel makes a loop without crossings.
            Point2[] loop =
            [
                new(0.11 + corners.Item1.X, 0.11 + corners.Item1.Y), new(0.09 - corners.Item2.X, 0.11 + corners.Item2.Y),
                new(0.09 - corners.Item3.X, 0.09 - corners.Item3.Y), new(0.11 + corners.Item4.X, 0.09 - corners.Item4.Y),
            ];
            Panel panel = Panel(Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(new LinePath([.. loop, loop[0]]))]);
            FillProblem problem = FillProblemBuilder.Build(panel);
            CutOff(problem.Operator, 0, 9 * 20 + 9).ShouldBeTrue();
            RelativeError(problem.PoreVolume.Sum(), 0.04 * 1.5e-3).ShouldBeLessThan(1e-12);
            problem.PoreVolume.ShouldAllBe(volume => volume > 0);
        }, iter: 200);
    }

    [Fact]
    public void FeedLine_InTwoPieces_ChangesNothing()
    {
        Panel whole = Panel(Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(Path((0, 0.03), (0, 0.1), (0.12, 0.17)))]);
        Panel split = whole with { Feeds = [Feed(Path((0, 0.03), (0, 0.0731), (0, 0.1), (0.0411, 0.1 + 0.0411 * 0.07 / 0.12), (0.12, 0.17)))] };

        FillProblem a = FillProblemBuilder.Build(whole), b = FillProblemBuilder.Build(split);

        b.Feeds[0].Contacts.Select(contact => contact.Cell).ShouldBe(a.Feeds[0].Contacts.Select(contact => contact.Cell));
        for (int k = 0; k < a.Feeds[0].Contacts.Count; k++) RelativeError(
            b.Feeds[0].Contacts[k].Conductance, a.Feeds[0].Contacts[k].Conductance).ShouldBeLessThan(1e-9);
        b.Operator.East.ShouldBe(a.Operator.East);
        b.Operator.North.ShouldBe(a.Operator.North);
    }

    [Theory]
    [InlineData(0.08, 0.1)]
    [InlineData(0.085, 0.095)]
    [InlineData(0.0831, 0.1047)]
    public void TwoFeedLines_EndToEnd_ActLikeOne(double x, double y)
    {
        Point2 from = new(0.021, 0.033), to = new(from.X + 2 * (x - from.X), from.Y + 2 * (y - from.Y));
        Panel one = Panel(Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(new LinePath([from, to]))]);
        Panel two = one with { Feeds = [Feed(new LinePath([from, new(x, y)])), Feed(new LinePath([new(x, y), to]))] };

        FillProblem a = FillProblemBuilder.Build(one), b = FillProblemBuilder.Build(two);

        for (int cell = 0; cell < 400; cell++)
        {
            b.Operator.Anchor[cell].ShouldBe(a.Operator.Anchor[cell], 1e-9 * 3e-13);
            b.PoreVolume[cell].ShouldBe(a.PoreVolume[cell], 1e-9 * 1.5e-7);
        }

        b.Operator.East.ShouldBe(a.Operator.East);
        b.Operator.North.ShouldBe(a.Operator.North);
    }

    [Fact]
    public void FeedLine_ShorterThanACell_ActsLikeAFitting()
    {
        Panel line = Panel(Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(Path((0.106, 0.106), (0.106, 0.109)), 1e-4)]);
        Panel fitting = line with { Feeds = [Feed(Path((0.106, 0.1075)), 0.003 / 2)] };

        FillProblem a = FillProblemBuilder.Build(line), b = FillProblemBuilder.Build(fitting);

        a.Feeds[0].Contacts.Select(contact => contact.Cell).ShouldBe(b.Feeds[0].Contacts.Select(contact => contact.Cell));
        for (int k = 0; k < a.Feeds[0].Contacts.Count; k++) RelativeError(
            a.Feeds[0].Contacts[k].Conductance, b.Feeds[0].Contacts[k].Conductance).ShouldBeLessThan(1e-12);
    }

    [Fact]
    public void TubeVent_BentRoundASingleCell_LeavesItOneWayIn()
    {
        // An open hook round the cell whose middle is (0.105, 0.105) crosses all four of its ways, the left one farthest away.
        Panel panel = Panel(
            Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(Path((0, 0), (0, 0.2)))],
            Vent(Path((0.112, 0.109), (0.098, 0.109), (0.098, 0.101), (0.11, 0.101), (0.11, 0.107))));
        FillProblem problem = FillProblemBuilder.Build(panel);
        int cell = 10 * 20 + 10;

        double ways = problem.Operator.East[cell] + problem.Operator.East[cell - 1] + problem.Operator.North[cell] + problem.Operator.North[cell - 20];

        ways.ShouldBe(3e-13, 1e-24);
        problem.Operator.East[cell - 1].ShouldBe(3e-13, 1e-24);
        TestSolver.SteadyPressure(problem)[cell].ShouldBeGreaterThan(0);
    }

    [Fact]
    public void FeedLine_LaidTwice_ChangesNothing()
    {
        Panel once = Panel(Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(Path((0.1, 0.002), (0.003, 0.11), (0.15, 0.17)))]);
        Panel twice = once with { Feeds = [Feed(Path((0.1, 0.002), (0.003, 0.11), (0.15, 0.17), (0.003, 0.11), (0.1, 0.002)))] };

        FillProblem a = FillProblemBuilder.Build(once), b = FillProblemBuilder.Build(twice);

        for (int cell = 0; cell < 400; cell++) b.Operator.Anchor[cell].ShouldBe(a.Operator.Anchor[cell], 1e-9 * 3e-13);
    }

    [Fact]
    public void FeedLine_MirroredPanel_GivesMirroredContacts()
    {
        LinePath path = Path((0, 0.03), (0, 0.1), (0.1213, 0.1731)), mirrored = new([.. path.Points.Select(p => new Point2(0.2 - p.X, p.Y))]);
        FillProblem a = FillProblemBuilder.Build(Panel(Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(path)]));
        FillProblem b = FillProblemBuilder.Build(Panel(Rectangle(0, 0, 0.2, 0.2), CellSize, [Cloth], [Feed(mirrored)]));

        for (int cell = 0; cell < 400; cell++)
        {
            int twin = cell / 20 * 20 + 19 - cell % 20;
            b.Operator.Anchor[twin].ShouldBe(a.Operator.Anchor[cell], 1e-5 * 3e-13);
            b.PoreVolume[twin].ShouldBe(a.PoreVolume[cell], 1e-6 * 1.5e-7);
        }
    }

    private static Panel StripFedAt(double x, double cellSize) =>
        Panel(Rectangle(0, 0, Length, Height), cellSize, [Cloth], [Feed(Path((x, 0), (x, Height)))]);

    private static bool CutOff(LatticeOperator a, int from, int to)
    {
        var reached = new HashSet<int> { from };
        var queue = new Queue<int>(reached);
        while (queue.TryDequeue(out int cell))
        {
            if (a.East[cell] > 0 && reached.Add(cell + 1)) queue.Enqueue(cell + 1);
            if (a.North[cell] > 0 && reached.Add(cell + a.Columns)) queue.Enqueue(cell + a.Columns);
            if (cell % a.Columns > 0 && a.East[cell - 1] > 0 && reached.Add(cell - 1)) queue.Enqueue(cell - 1);
            if (cell >= a.Columns && a.North[cell - a.Columns] > 0 && reached.Add(cell - a.Columns)) queue.Enqueue(cell - a.Columns);
        }

        return !reached.Contains(to);
    }

    private static double RelativeError(double value, double expected) => FillProblemBuilderTests.RelativeError(value, expected);
}

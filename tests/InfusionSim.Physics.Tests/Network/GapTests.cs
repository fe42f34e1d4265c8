using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Network;

public sealed class GapTests
{
    private static readonly Ring Plate = Rectangle(0, 0, 0.5, 0.2);
    private static readonly Feed LeftEdge = Feed(Path((0, 0), (0, 0.2)));

    [Fact]
    public void Gap_WithoutAHeight_IsAsHighAsTheClothBesideIt()
    {
        FillProblem problem = Build(0.02, new Gap("G", Path((0, 0.2), (0.5, 0.2)), 2e-3, null));

        problem.Network.Nodes.Count.ShouldBe(25);
        problem.Network.Nodes.Sum(node => node.Volume).ShouldBe(0.5 * 2e-3 * 3e-3, 1e-15);
        problem.Network.Links[0].Conductance.ShouldBe(1.9576071e-7 * 6e-6 / 0.02, 1e-16);
    }

    [Fact]
    public void Gap_OnTheOutline_TouchesEachEdgeCellByHalfACell()
    {
        FillProblem problem = Build(0.02, new Gap("G", Path((0, 0.2), (0.5, 0.2)), 2e-3, null));

        problem.Gaps[0].Contacts.Count.ShouldBe(25);
        problem.Gaps[0].Contacts.ShouldAllBe(contact => Math.Abs(contact.Conductance / (2 * 3e-13) - 1) < 1e-9);
        problem.Gaps[0].Contacts.Select(contact => contact.LineNode).ShouldBe(Enumerable.Range(problem.Network.FirstNode, 25));
    }

    [Fact]
    public void Gap_ThatEndsAtAFeedLine_IsFedByIt()
    {
        FillProblem problem = Build(0.02, new Gap("G", Path((0, 0.2), (0.5, 0.2)), 2e-3, null));

        problem.Network.FedGaps.Count.ShouldBe(1);
        problem.Network.FedGaps[0].GapNode.ShouldBe(problem.Network.FirstNode);
        problem.Network.FedGaps[0].Conductance.ShouldBe(1.9576071e-7 * 6e-6 / 0.01, 1e-16);
        problem.Network.Sources.Count.ShouldBe(1);
    }

    [Fact]
    public void Gap_FarFromAnyFeed_IsFedByTheClothAlone() =>
        Build(0.02, new Gap("G", Path((0.1, 0.2), (0.5, 0.2)), 2e-3, null)).Network.Sources.ShouldBeEmpty();

    [Fact]
    public void Gap_InsideTheCloth_PartsItAndJoinsBothSides()
    {
        FillProblem problem = Build(0.02, new Gap("G", Path((0.25, 0), (0.25, 0.2)), 2e-3, null));

        // The gap runs through the middles of a column of cells: from each of them and from each neighbour a way leads to it.
        problem.Gaps[0].Contacts.Sum(contact => contact.Conductance).ShouldBeGreaterThan(0);
        problem.Operator.East.Count(way => way > 0).ShouldBe(24 * 10 - 10);
        problem.Gaps[0].Contacts.Count.ShouldBe(20);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.26)]
    [InlineData(0.2437)]
    public void Gap_AcrossTheFlow_SparesTheFlowItsOwnWidth(double x)
    {
        Vent vent = Vent(Path((0.5, 0), (0.5, 0.2)));
        double with = SteadyFlow(
            FillProblemBuilder.Build(Panel(Plate, 0.02, [Cloth], [LeftEdge], vent) with { Gaps = [new Gap("G", Path((x, 0.0), (x, 0.2)), 2e-3, null)] }));

        // 498 mm of cloth instead of 500. A gap over the middles of cells counts a fiftieth of a cell too little: 0.4 mm.
        with.ShouldBe(3e-13 * 0.2 / 0.498, 1e-3 * 3e-13 * 0.2 / 0.498);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.26)]
    [InlineData(0.2437)]
    public void Gap_InsideTheCloth_TakesItsRoomFromIt(double x)
    {
        FillProblem problem = Build(0.02, new Gap("G", Path((x, 0.02), (x, 0.17)), 2e-3, null));

        problem.PoreVolume.Take(problem.Operator.CellCount).Sum().ShouldBe(0.5 * 3e-3 * (0.5 * 0.2 - 0.15 * 2e-3), 1e-15);
        problem.Network.Nodes.Sum(node => node.Volume).ShouldBe(0.15 * 2e-3 * 3e-3, 1e-15);
    }

    [Fact]
    public void Gap_ThroughSubLayers_TouchesEachByItsShare()
    {
        Gap gap = new("G", Path((0, 0.2), (0.5, 0.2)), 2e-3, null);
        FillProblem one = Build(0.02, gap), four = FillProblemBuilder.Build(Panel(Plate, 0.02, [Cloth], [LeftEdge]) with { Gaps = [gap], SubLayers = 4 });

        four.Gaps[0].Contacts.Count.ShouldBe(4 * one.Gaps[0].Contacts.Count);
        four.Gaps[0].Contacts.Sum(contact => contact.Conductance).ShouldBe(one.Gaps[0].Contacts.Sum(contact => contact.Conductance), 1e-24);
        four.Gaps[0].Contacts.ShouldAllBe(contact => four.Network[contact.LineNode].Part == LinePart.Gap);
    }

    [Fact]
    public void Gap_FromFeedToVent_PassesAsMuchAsItsDuctLaw()
    {
        Vent vent = Vent(Path((0.5, 0), (0.5, 0.2)));
        Panel panel = Panel(Plate, 0.02, [Cloth], [LeftEdge], vent) with { Gaps = [new Gap("G", Path((0, 0.2), (0.5, 0.2)), 2e-3, 1e-3)] };
        FillProblem problem = FillProblemBuilder.Build(panel);

        double expected = 3e-13 * 0.2 / 0.5 + Passages.Duct(2e-3, 1e-3) * 2e-6 / 0.5;
        problem.Network.VentedGaps.Count.ShouldBe(1);
        SteadyFlow(problem).ShouldBe(expected, 1e-6 * expected);
    }

    [Fact]
    public void Gaps_ThatMeetAtACorner_PassResinOn()
    {
        FillProblem problem = FillProblemBuilder.Build(Panel(Plate, 0.02, [Cloth], [LeftEdge]) with
        {
            Gaps = [new Gap("G1", Path((0, 0.2), (0.5, 0.2)), 2e-3, null), new Gap("G2", Path((0.5, 0.2), (0.5, 0)), 1e-3, null)],
        });

        NodeChain first = problem.Network.Gaps[0], second = problem.Network.Gaps[1];
        problem.Network.Links.ShouldContain(link => link.First == first.First + first.Count - 1 && link.Second == second.First);
    }

    [Fact]
    public void Gap_AlongAFeedLine_IsFedAllAlong()
    {
        FillProblem problem = FillProblemBuilder.Build(Panel(Plate, 0.02, [Cloth], [LeftEdge]) with { Gaps = [new Gap("G", Around(Plate), 2e-3, null)] });

        NodeChain ring = problem.Network.Gaps[0];
        int[] besideFeed = [.. Enumerable.Range(ring.First, ring.Count).Where(node => problem.Network[node].At!.Value.X < 1e-6)];
        besideFeed.Length.ShouldBe(10);
        besideFeed.ShouldBeSubsetOf(problem.Network.FedGaps.Select(contact => contact.GapNode));
    }

    [Fact]
    public void Accounts_WithAGap_AddUp()
    {
        FillProblem problem = FillProblemBuilder.Build(
            Panel(Plate, 0.025, [Cloth], [LeftEdge], Vent(Path((0.5, 0), (0.5, 0.2)))) with { Gaps = [new Gap("G", Path((0, 0.2), (0.5, 0.2)), 1e-3, null)] });
        NodeSolver solver = new(problem);
        foreach (double clock in (double[])[1e5, 1e7, 1e8, 4e8])
        {
            (double[] accumulated, double[] saturation) = solver.StateAt(clock);
            ResinAccount account = ResinAccount.Of(problem, FillStart.Dry(problem), clock, accumulated, saturation);

            account.Error.ShouldBeLessThan(1e-9);
            account.In[0].ShouldBe(account.InPart + account.InGaps + account.Out[0], 1e-9 * account.In[0]);
        }
    }

    private static double SteadyFlow(FillProblem problem)
    {
        double[] pressure = new NodeSolver(problem).SteadyPressure();
        return ResinAccount.Of(problem, FillStart.Dry(problem), 1, pressure, new double[pressure.Length]).In[0];
    }

    private static FillProblem Build(double cellSize, Gap gap) => FillProblemBuilder.Build(Panel(Plate, cellSize, [Cloth], [LeftEdge]) with { Gaps = [gap] });
}

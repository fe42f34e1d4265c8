using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Lines;

public class OutlineLineTests
{
    private static readonly Ring Square = Rectangle(0, 0, 0.2, 0.2);

    [Fact]
    public void FeedLine_OverPartOfAnEdge_ConductsByTheCoveredLength()
    {
        // 12.5 mm to 38 mm of 10 mm cells: 7.5, 10 and 8 mm.
        LineContact contact = ContactOf(Square, Path((0, 0.0125), (0, 0.038)));

        contact.Contacts.Select(c => c.Cell).ShouldBe([20, 40, 60]);
        double[] expected = [0.75, 1, 0.8];
        for (int k = 0; k < 3; k++) contact.Contacts[k].Conductance.ShouldBe(3e-13 * 2 * expected[k], 1e-24);
        contact.Contacts.ShouldAllBe(c => c.FullWhenWet);
    }

    [Fact]
    public void FeedLine_RoundTheOutline_TouchesEachEdgeCellOnceAndCornersTwiceAsMuch()
    {
        LineContact contact = ContactOf(Square, Around(Square));

        contact.Contacts.Count.ShouldBe(4 * 19);
        contact.Contacts.Single(c => c.Cell == 0).Conductance.ShouldBe(4 * 3e-13, 1e-24);
        contact.Contacts.Single(c => c.Cell == 5).Conductance.ShouldBe(2 * 3e-13, 1e-24);
    }

    [Fact]
    public void FeedLine_LaidTwiceOverTheSameEdge_CountsOnce()
    {
        LineContact once = ContactOf(Square, Path((0, 0.02), (0, 0.15)));
        LineContact twice = ContactOf(Square, Path((0, 0.02), (0, 0.15), (0, 0.07)));

        for (int k = 0; k < once.Contacts.Count; k++) twice.Contacts[k].Conductance.ShouldBe(once.Contacts[k].Conductance, 1e-24);
    }

    [Theory]
    [InlineData(0.0009, true)]
    [InlineData(0.0011, false)]
    public void FeedLine_BesideAnEdge_CountsAsOnItWithinOneMillimetre(double distance, bool onOutline)
    {
        LineContact contact = ContactOf(Square, Path((distance, 0), (distance, 0.2)));

        double expected = onOutline ? 2 : 0.01 / (0.005 - distance);
        contact.Contacts.Count.ShouldBe(20);
        (contact.Contacts[10].Conductance / 3e-13).ShouldBe(expected, 1e-4 * expected);
    }

    [Fact]
    public void FeedLine_EndingOnAnEdge_DoesNotFeedThroughIt()
    {
        FillProblem problem = FillProblemBuilder.Build(Panel(Square, 0.01, [Cloth], [Feed(Path((0.1, 0), (0.1, 0.1)))]));

        // Ten cells on either side of the line, each at half a cell.
        problem.Feeds[0].Contacts.Count.ShouldBe(20);
        problem.Feeds[0].Contacts.ShouldAllBe(c => Math.Abs(c.Conductance / 6e-13 - 1) < 1e-5);
    }

    [Fact]
    public void FeedLine_OnACutOutEdge_Feeds()
    {
        Ring hole = Rectangle(0.0812, 0.0812, 0.1188, 0.1188);
        Panel panel = Panel(Square, 0.01, [Cloth], [Feed(Path((0.0812, 0.0812), (0.0812, 0.1188)))]) with { Region = new(Square, [hole]) };

        FillProblem problem = FillProblemBuilder.Build(panel);

        problem.Feeds[0].Contacts.ShouldAllBe(c => c.FullWhenWet);
        // Cells of the column at the edge are 1.2 mm wide (8 cells left of 80 mm): covered length over half the width.
        double sum = problem.Feeds[0].Contacts.Where(c => c.Cell / 20 is > 8 and < 11).Sum(c => c.Conductance);
        sum.ShouldBe(3e-13 * 0.02 / 0.0006, 1e-17);
    }

    [Fact]
    public void FeedLine_AcrossAnInterfaceBesideTheEdge_TakesTheResistanceOfBothZones()
    {
        Zone skin = ZoneOf("skin", 3e-3, 0.5, 1e-10, 1e-10), edge = ZoneOf("edge", 3e-3, 0.5, 4e-10, 4e-10, 0, Rectangle(-1, -1, 0.002, 1));

        LineContact contact = FillProblemBuilder.Build(Panel(Square, 0.01, [skin, edge], [Feed(Path((0, 0), (0, 0.2)))])).Feeds[0];

        contact.Contacts[10].Conductance.ShouldBe(0.01 / (0.002 / 1.2e-12 + 0.003 / 3e-13), 1e-24);
    }

    // Fill of a disc fed all round: φR²/(4K) (torsion function of a circle; Timoshenko & Goodier, Theory of Elasticity, from memory).
    [Theory]
    [InlineData(0.0037)]
    public void FeedLine_RoundADisc_FillClockIsThatOfTheClosedForm(double shift)
    {
        Ring disc = Disc(0.5, 720);
        FillProblem problem = FillProblemBuilder.Build(Panel(disc, 0.01, [Cloth], [Feed(Around(disc))]), new Point2(-0.5 - shift, -0.5 - shift));

        FillProblemBuilderTests.RelativeError(TestSolver.FillClock(problem), 0.5 * 0.25 / 4e-10).ShouldBeLessThan(3e-3);
    }

    private static LineContact ContactOf(Ring outline, LinePath path) =>
        FillProblemBuilder.Build(Panel(outline, 0.01, [Cloth], [Feed(path)])).Feeds[0];
}

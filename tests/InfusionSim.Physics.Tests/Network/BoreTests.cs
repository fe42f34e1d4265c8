using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Network;

public sealed class BoreTests
{
    private const double Length = 2, Across = 0.1, Radius = 5e-3;

    [Theory]
    [InlineData(1e-10, 0.976042)]
    [InlineData(1.1e-9, 0.780532)]
    public void FeedLine_WithABore_LosesPressureAlongIt(double permeability, double expected)
    {
        FillProblem problem = FillProblemBuilder.Build(FedStrip(permeability, new Feed("F", Path((0, 0), (0, Length)), 0.012) { Bore = 2 * Radius }));
        double[] pressure = new NodeSolver(problem).SteadyPressure();

        // p'' = m² p along the line: cosh(m (L − s)) / cosh(m L), so the end holds 1 / cosh(m L).
        // It leaves out the resin that runs along the cloth: a thousandth of what the bore carries.
        double m = Math.Acosh(1 / expected) / Length;
        NodeChain chain = problem.Network.Feeds[0]!;
        for (int node = chain.First; node < chain.First + chain.Count; node++)
            pressure[node].ShouldBe(Math.Cosh(m * (Length - chain.StationOf(node))) / Math.Cosh(m * Length), 1.2e-4);
    }

    [Fact]
    public void FeedLine_FedInItsMiddle_LosesAsALineOfHalfTheLength()
    {
        Feed feed = new("F", Path((0, 0), (0, Length)), 0.012) { Bore = 2 * Radius, Hose = new Hose(0.05, 1e-3, IsPrimed: true, JoinsAt: new Point2(0, Length / 2)) };
        FillProblem problem = FillProblemBuilder.Build(FedStrip(1.1e-9, feed));
        double[] pressure = new NodeSolver(problem).SteadyPressure();

        double m = Math.Sqrt(8 * 3.3e-12 / (Across * Math.PI * Math.Pow(Radius, 4)));
        double expected = 1 / Math.Cosh(m * Length / 2);
        pressure[problem.Network.FirstNode].ShouldBe(expected, 1e-4);
        pressure[^1].ShouldBe(expected, 1e-4);
    }

    [Fact]
    public void FeedLine_WithABore_HasANodeForEachSquareItPasses()
    {
        FillProblem problem = FillProblemBuilder.Build(FedStrip(1e-10, new Feed("F", Path((0, 0), (0, Length)), 0.012) { Bore = 2 * Radius }));

        NodeChain chain = problem.Network.Feeds[0]!;
        chain.Count.ShouldBe(100);
        problem.Feeds[0].Contacts.Select(contact => contact.LineNode).ShouldBe(Enumerable.Range(chain.First, 100));
        problem.Network.Nodes.Sum(node => node.Volume).ShouldBe(Math.PI * Radius * Radius * Length, 1e-12);
    }

    [Fact]
    public void InnerLine_WithABore_FeedsBothSidesFromTheSameNodes()
    {
        Feed feed = new("F", Path((0.05, 0.2), (0.05, 1.8)), 0.012) { Bore = 2 * Radius };
        FillProblem problem = FillProblemBuilder.Build(FedStrip(1e-10, feed));

        foreach (var node in problem.Feeds[0].Contacts.GroupBy(contact => contact.LineNode)) node.Count().ShouldBe(2);
        problem.Operator.Anchor.Take(problem.Operator.CellCount).Sum().ShouldBe(problem.Vents[0].Contacts.Sum(contact => contact.Conductance));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(17)]
    [InlineData(45)]
    public void SlantedLine_WithABore_IsCutIntoLengthsNearASquare(double degrees)
    {
        double angle = degrees * Math.PI / 180;
        Ring square = Rectangle(0, 0, 0.4, 0.4);
        Feed feed = new("F", Path((0.05, 0.03), (0.05 + 0.3 * Math.Cos(angle), 0.03 + 0.3 * Math.Sin(angle))), 0.012) { Bore = 8e-3 };
        FillProblem problem = FillProblemBuilder.Build(Panel(square, 0.01, [Cloth], [feed]));

        NodeChain chain = problem.Network.Feeds[0]!;
        for (int node = chain.First; node < chain.First + chain.Count; node++) chain.LengthOf(node).ShouldBeInRange(0.005, 0.0205);
        problem.Feeds[0].Contacts.Select(contact => contact.LineNode).Distinct().Count().ShouldBeGreaterThan(chain.Count - 3);
    }

    private static Panel FedStrip(double permeability, Feed feed) => Panel(
        Rectangle(0, 0, Across, Length), 0.02, [ZoneOf("cloth", 3e-3, 0.5, permeability, permeability)], [feed], Vent(Path((Across, 0), (Across, Length))));
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Flow;

public class FillProblemBuilderTests
{
    // Darcy's law with a front: θ = φL²/(2K) (derived). First and last cell are cut where the grid starts left of the strip.
    [Theory]
    [InlineData(0.5, 0)]
    [InlineData(0.3, 0)]
    [InlineData(0.0713, 0)]
    [InlineData(0.005, 0)]
    [InlineData(0.0713, 0.0311)]
    [InlineData(0.0131, 0.0129)]
    [InlineData(0.00503, 0.0027)]
    public void Build_StripFedThroughItsEdge_FillClockIsExact(double cellSize, double shift)
    {
        Panel panel = Strip(0.5, 0.01, cellSize, Cloth);

        FillProblem problem = FillProblemBuilder.Build(panel, new Point2(-shift, 0));

        RelativeError(TestSolver.FillClock(problem), 0.5 * 0.5 * 0.5 / 2e-10).ShouldBeLessThan(1e-12);
        problem.PoreVolume.Sum().ShouldBe(0.5 * 0.01 * 3e-3 * 0.5, 1e-18);
    }

    // t = (μ/Δp) {φ₁L₁²/(2K₁) + φ₂ (L₁L₂/K₁ + L₂²/(2K₂))} for two zones in series (derived); μ = 0.2 Pa·s, Δp = 1e5 Pa.
    [Theory]
    [InlineData(false, 877.5)]
    [InlineData(true, 1927.5)]
    public void Build_TwoZonesMeetingOnAFace_FillTimeIsExact(bool reversed, double expected)
    {
        FillProblem problem = FillProblemBuilder.Build(TwoZones(0.1, reversed));

        RelativeError(TestSolver.FillClock(problem) * 0.2 / 1e5, expected).ShouldBeLessThan(1e-12);
    }

    [Theory]
    [InlineData(false, 877.5)]
    [InlineData(true, 1927.5)]
    public void Build_TwoZonesMeetingInsideACell_ErrorFallsAsTheSquareOfTheCell(bool reversed, double expected)
    {
        // The zones meet at the same share of a cell on each grid: 0.3 m is 7.5, 22.5 and 67.5 cells, 0.2 m is 5, 15 and 45.
        double[] errors = [.. new[] { 0.04, 0.04 / 3, 0.04 / 9 }.Select(cellSize =>
            Math.Abs(TestSolver.FillClock(FillProblemBuilder.Build(TwoZones(cellSize, reversed), new Point2(reversed ? -cellSize / 2 : 0, 0))) * 0.2 / 1e5 - expected) / expected)];

        double order = Math.Log(errors[0] / errors[2]) / Math.Log(9);
        order.ShouldBeGreaterThan(1.85, $"errors {string.Join(", ", errors)}");
        errors[2].ShouldBeLessThan(2e-4);
    }

    [Theory]
    [InlineData(0, 4e-10)]
    [InlineData(90, 1e-10)]
    [InlineData(180, 4e-10)]
    [InlineData(270, 1e-10)]
    public void Build_TurnedCloth_TakesThePermeabilityAlongX(double degrees, double permeability)
    {
        Panel panel = Strip(0.5, 0.03, 0.01, ZoneOf("turned", 3e-3, 0.5, 4e-10, 1e-10, degrees * Math.PI / 180));

        RelativeError(TestSolver.FillClock(FillProblemBuilder.Build(panel)), 0.5 * 0.25 / (2 * permeability)).ShouldBeLessThan(1e-12);
    }

    [Fact]
    public void Build_PlaceWithoutZone_IsRefusedWithItsPlace()
    {
        Panel panel = Strip(0.5, 0.03, 0.01, ZoneOf("left", 3e-3, 0.5, 1e-10, 1e-10, 0, Rectangle(0, 0, 0.3, 0.03)));

        Should.Throw<InvalidOperationException>(() => FillProblemBuilder.Build(panel)).Message.ShouldContain("No zone covers");
    }

    [Fact]
    public void Build_OverlappingZones_LastNamedDecidesAlone()
    {
        // Base 2 mm, first patch 4 mm on [0.1, 0.3], second patch 1 mm on [0.2037, 0.4]: the second hides part of the first.
        Panel panel = Strip(0.5, 0.0317, 0.01,
            ZoneOf("base", 2e-3, 0.5, 1e-10, 1e-10),
            ZoneOf("first", 4e-3, 0.5, 1e-10, 1e-10, 0, Rectangle(0.1, -1, 0.3, 1)),
            ZoneOf("second", 1e-3, 0.5, 1e-10, 1e-10, 0, Rectangle(0.2037, -1, 0.4, 1)));

        double expected = 0.5 * 0.0317 * (0.2 * 2e-3 + 0.1037 * 4e-3 + 0.1963 * 1e-3);
        RelativeError(FillProblemBuilder.Build(panel).PoreVolume.Sum(), expected).ShouldBeLessThan(1e-12);
    }

    [Fact]
    public void Build_MembraneVent_KeepsItsContactsButHoldsNoPressure()
    {
        Panel panel = Strip(0.5, 0.03, 0.01, Cloth) with { Vents = [Vent(Path((0.5, 0), (0.5, 0.03)), VentKind.Membrane)] };

        FillProblem problem = FillProblemBuilder.Build(panel);

        problem.Vents[0].Contacts.Count.ShouldBe(3);
        problem.Vents[0].Contacts.ShouldAllBe(contact => contact.Conductance > 0 && contact.FullWhenWet);
        problem.Operator.Anchor[49].ShouldBe(0);
        problem.VentPassesResin.ShouldBe([false]);
        RelativeError(
            FillProblemBuilder.Build(panel with { Vents = [Vent(Path((0.5, 0), (0.5, 0.03)))] }).Operator.Anchor[49], 3e-13 * 2).ShouldBeLessThan(1e-12);
    }

    private static Panel TwoZones(double cellSize, bool reversed)
    {
        Zone fast = ZoneOf("fast", 3e-3, 0.55, 2e-10, 2e-10), slow = ZoneOf("slow", 3e-3, 0.45, 5e-11, 5e-11);
        double split = reversed ? 0.2 : 0.3;
        return Strip(0.5, 0.03, cellSize, reversed ? slow : fast, (reversed ? fast : slow) with { Area = Rectangle(split, 0, 0.5, 0.03) });
    }

    internal static double RelativeError(double value, double expected) => Math.Abs(value / expected - 1);
}

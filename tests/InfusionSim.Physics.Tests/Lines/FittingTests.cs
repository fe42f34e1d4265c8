using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Lines;

public class FittingTests
{
    private const double Radius = 0.25;

    // Radial flow between a fitting of radius r and an open rim of radius R: 2πK·thickness/ln(R/r) (textbook).
    [Theory]
    [InlineData(0.002, 0.01, 0)]
    [InlineData(0.012, 0.005, 0)]
    [InlineData(0.012, 0.005, 0.0025)]
    [InlineData(0.04, 0.005, 0)]
    [InlineData(0.012, 0.005, 0.0011)]
    public void Fitting_InTheMiddleOfADisc_FlowIsRadial(double diameter, double cellSize, double shift)
    {
        Ring disc = Disc(Radius, 720);
        Panel panel = Panel(disc, cellSize, [Cloth], [Feed(Path((0, 0)), diameter)], Vent(Around(disc)));

        double flow = TestSolver.SteadyFlow(FillProblemBuilder.Build(panel, new Point2(-0.255 - shift, -0.255 - shift)));

        FillProblemBuilderTests.RelativeError(flow, 2 * Math.PI * 3e-13 / Math.Log(2 * Radius / diameter)).ShouldBeLessThan(2e-3);
    }

    // With K1 ≠ K2 the circle acts as one of (r/2)[(Kx/Ky)^¼ + (Ky/Kx)^¼] in the stretched plane, where an elliptic rim is a circle (derived).
    [Theory]
    [InlineData(4e-10, 1e-10)]
    [InlineData(1e-10, 4e-10)]
    public void Fitting_InOrthotropicCloth_FlowIsThatOfTheStretchedCircle(double k1, double k2)
    {
        double stretch = Math.Pow(k1 / k2, 0.25), diameter = 0.012;
        Ring rim = new([.. Disc(Radius, 720).Corners.Select(c => new Point2(c.X * stretch, c.Y / stretch))]);
        Panel panel = Panel(rim, 0.005, [ZoneOf("unidirectional", 3e-3, 0.5, k1, k2)], [Feed(Path((0, 0)), diameter)], Vent(Around(rim)));
        double origin = -(Math.Ceiling(Radius * Math.Max(stretch, 1 / stretch) / 0.005) + 0.5) * 0.005;

        double flow = TestSolver.SteadyFlow(FillProblemBuilder.Build(panel, new Point2(origin, origin)));

        double effective = diameter / 4 * (stretch + 1 / stretch);
        FillProblemBuilderTests.RelativeError(flow, 2 * Math.PI * 3e-3 * 2e-10 / Math.Log(Radius / effective)).ShouldBeLessThan(3e-3);
    }

    // Reflection at the walls: half the flow of a disc on a straight edge, a quarter in a right corner.
    [Theory]
    [InlineData(1, 0.012)]
    [InlineData(2, 0.012)]
    [InlineData(1, 0.002)]
    [InlineData(2, 0.002)]
    public void Fitting_OnAnEdgeOrInACorner_FlowIsItsShareOfTheDisc(int walls, double diameter)
    {
        Ring disc = Disc(Radius, 720);
        Panel whole = Panel(disc, 0.005, [Cloth], [Feed(Path((0, 0)), diameter)], Vent(Around(disc)));
        Ring part = PartOfDisc(walls);
        Point2[] rim = [.. part.Corners.Where(c => c.X * c.X + c.Y * c.Y > 0)];
        Panel cut = Panel(part, 0.005, [Cloth], [Feed(Path((0, 0)), diameter)], Vent(new LinePath(rim)));

        double all = TestSolver.SteadyFlow(FillProblemBuilder.Build(whole, new Point2(-0.25, -0.25)));
        double share = TestSolver.SteadyFlow(FillProblemBuilder.Build(cut, new Point2(walls == 1 ? -0.25 : 0, 0)));

        FillProblemBuilderTests.RelativeError(share * (walls == 1 ? 2 : 4), all).ShouldBeLessThan(1e-4);
    }

    // A wall that runs through the cells: the cluster is cut with them.
    [Theory]
    [InlineData(0.0013)]
    [InlineData(0.0025)]
    [InlineData(0.004)]
    public void Fitting_OnAnEdgeBetweenFaces_FlowIsHalfTheDisc(double shift)
    {
        Ring part = PartOfDisc(1);
        Point2[] rim = [.. part.Corners.Where(c => c.X * c.X + c.Y * c.Y > 0)];
        Panel cut = Panel(part, 0.005, [Cloth], [Feed(Path((0, 0)), 0.012)], Vent(new LinePath(rim)));

        double flow = TestSolver.SteadyFlow(FillProblemBuilder.Build(cut, new Point2(-0.25, -shift)));

        FillProblemBuilderTests.RelativeError(flow, Math.PI * 3e-13 / Math.Log(Radius / 0.006)).ShouldBeLessThan(0.03);
    }

    [Fact]
    public void Fitting_InTheMiddleOfASquare_KeepsItsSymmetry()
    {
        FillProblem problem = FillProblemBuilder.Build(Panel(Rectangle(0, 0, 0.2, 0.2), 0.01, [Cloth], [Feed(Path((0.1, 0.1)))]));

        problem.Feeds[0].Contacts.Select(c => c.Cell).ShouldBe([189, 190, 209, 210]);
        problem.Feeds[0].Contacts.ShouldAllBe(c => Math.Abs(c.Conductance / problem.Feeds[0].Contacts[0].Conductance - 1) < 1e-12 && !c.FullWhenWet);
    }

    [Fact]
    public void TubeVent_AsWideAsSeveralCells_FillsBeneathItself()
    {
        // Cells ringed by the cluster pass nothing: they must still fill soon after their neighbours.
        Panel panel = Panel(Rectangle(0, 0, 0.205, 0.205), 0.005, [Cloth], [Feed(Around(Rectangle(0, 0, 0.205, 0.205)))], Vent(Path((0.1025, 0.1025))));
        FillProblem problem = FillProblemBuilder.Build(panel);

        double[] u = TestSolver.Solve(problem.Operator, problem.PoreVolume), pressure = TestSolver.SteadyPressure(problem);
        int middle = 20 * 41 + 20;

        (u[middle] / pressure[middle]).ShouldBeLessThan(1.05 * u[middle - 41 - 1] / pressure[middle - 41 - 1]);
    }

    [Fact]
    public void Fitting_BesideASlit_DoesNotReachAcrossIt()
    {
        // 2 mm slit at x = 0.1: squares left of it lie under the cluster of a fitting right of it.
        Panel panel = Panel(Rectangle(0, 0, 0.2, 0.2), 0.005, [Cloth], [Feed(Path((0.1085, 0.0525)))]);
        panel = panel with { Region = new(panel.Region.Outline, [Rectangle(0.099, 0.02, 0.101, 0.15)]) };

        FillProblem problem = FillProblemBuilder.Build(panel);

        problem.Feeds[0].Contacts.ShouldNotBeEmpty();
        problem.Feeds[0].Contacts.ShouldAllBe(c => problem.Cells.CentroidX[c.Cell] > 0.1);
    }

    [Fact]
    public void Fitting_OnAnEdge_FillsLikeHalfOfTheMirroredPanel()
    {
        Panel half = Panel(Rectangle(0, 0, 0.2, 0.1), 0.005, [Cloth], [Feed(Path((0.1, 0)))]);
        Panel whole = Panel(Rectangle(0, -0.1, 0.2, 0.1), 0.005, [Cloth], [Feed(Path((0.1, 0)))]);

        double clock = TestSolver.FillClock(FillProblemBuilder.Build(half)), expected = TestSolver.FillClock(FillProblemBuilder.Build(whole));

        FillProblemBuilderTests.RelativeError(clock, expected).ShouldBeLessThan(1e-9);
    }

    private static Ring PartOfDisc(int walls)
    {
        double to = walls == 1 ? Math.PI : Math.PI / 2;
        List<Point2> corners = [.. Enumerable.Range(0, 361).Select(k => new Point2(Radius * Math.Cos(to * k / 360), k == 360 && walls == 1 ? 0 : Radius * Math.Sin(to * k / 360)))];
        if (walls == 2) corners[360] = new(0, Radius);
        corners.Add(new(0, 0));
        return new(corners);
    }
}

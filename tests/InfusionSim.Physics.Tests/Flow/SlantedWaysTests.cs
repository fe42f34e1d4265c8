using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Flow;

public sealed class SlantedWaysTests
{
    private const double Cell = 0.01;

    private static readonly Gen<Permeability> AnyCloth = Gen.Select(
        Gen.Double[-12, -9], Gen.Double[0, 2], Gen.Double[-Math.PI, Math.PI],
        (size, ratio, angle) => new Permeability(Math.Pow(10, size + ratio), Math.Pow(10, size), 1e-12, angle));

    [Theory]
    [InlineData(0)]
    [InlineData(90)]
    [InlineData(180.001)]
    public void Build_ClothAlongTheSquares_HasNoSlantedWay(double degrees)
    {
        Panel panel = Strip(0.1, 0.05, Cell, ZoneOf("skin", 3e-3, 0.5, 4e-10, 1e-10, degrees * Math.PI / 180));

        FillProblemBuilder.Build(panel).Operator.Ways.Count.ShouldBe(2);
    }

    [Fact]
    public void Build_AnyCloth_ConductsLikeItsTensor() => AnyCloth.Sample(
        cloth =>
        {
            Panel panel = Panel(Rectangle(0, 0, 0.25, 0.25), Cell, [new Zone("skin", null, 3e-3, 0.5, cloth)], [Feed(Path((0, 0), (0, 0.25)))]);
            LatticeOperator conductances = FillProblemBuilder.Build(panel).Operator;
            double cosine = Math.Cos(cloth.Angle), sine = Math.Sin(cloth.Angle), size = (cloth.K1 + cloth.K2) * 3e-3;
            int middle = 12 * 25 + 12;

            // A hundredth of a degree counts as along the squares, which moves Kxy by 2e-4 of K1 at most.
            Sum(way => way.Right * way.Right).ShouldBe((cloth.K1 * cosine * cosine + cloth.K2 * sine * sine) * 3e-3, 2e-4 * size);
            Sum(way => way.Up * way.Up).ShouldBe((cloth.K1 * sine * sine + cloth.K2 * cosine * cosine) * 3e-3, 2e-4 * size);
            Sum(way => way.Right * way.Up).ShouldBe((cloth.K1 - cloth.K2) * sine * cosine * 3e-3, 2e-4 * size);
            conductances.Ways.ShouldAllBe(way => way.Conductance.All(value => value >= 0));

            double Sum(Func<StencilWay, int> factor) => conductances.Ways.Sum(way => way.Conductance[middle] * factor(way));
        },
        iter: 100);

    [Fact]
    public void Build_EdgeFedStraight_PassesTheTrueFlowBesideIt() => AnyCloth.Sample(
        cloth =>
        {
            // A pressure that falls evenly from the fed edge drives the same flow through every section: no cell away from the ends of the edge gains or loses.
            const int Rows = 41, Columns = 25;
            Panel panel = Panel(
                Rectangle(0, 0, Columns * Cell, Rows * Cell), Cell, [new Zone("skin", null, 3e-3, 0.5, cloth)], [Feed(Path((0, 0), (0, Rows * Cell)))]);
            FillProblem problem = FillProblemBuilder.Build(panel);
            List<NodeNeighbour> neighbours = [];
            Dictionary<int, double> fed = problem.Feeds[0].Contacts.ToDictionary(contact => contact.Cell, contact => contact.Conductance);
            double largest = 0;
            for (int column = 0; column < 8; column++)
            {
                int cell = 20 * Columns + column;
                problem.Operator.CollectNeighbours(cell, neighbours);
                double x = problem.Cells.CentroidX[cell];
                double loss = fed.GetValueOrDefault(cell) * x + neighbours.Sum(
                    neighbour => neighbour.Conductance * (x - problem.Cells.CentroidX[neighbour.Node]));
                largest = Math.Max(largest, Math.Abs(loss));
            }

            largest.ShouldBeLessThan(1e-9 * Cell * problem.Operator.DiagonalOf(20 * Columns + 12));
        },
        iter: 80);

    [Fact]
    public void Build_SlitOfOneSquareOrLess_StaysTight() => Gen.Select(AnyCloth, Gen.Double[0.02, 1], Gen.Double[0.15, 0.35], Gen.Double[0, Math.PI]).Sample(
        (cloth, width, middle, angle) =>
        {
            // A slit across the middle of the panel, at any angle and place on the grid.
            double half = width * Cell / 2, length = 0.12, x = Math.Cos(angle), y = Math.Sin(angle);
            Point2 centre = new(middle, 0.25);
            Ring slit = new([At(-length, -half), At(length, -half), At(length, half), At(-length, half)]);
            Panel panel = Panel(Rectangle(0, 0, 0.5, 0.5), Cell, [new Zone("skin", null, 3e-3, 0.5, cloth)], [Feed(Path((0, 0), (0, 0.5)))]);
            FillProblem problem = FillProblemBuilder.Build(panel with { Region = new Region(panel.Region.Outline, [slit]) });

            // Ways through faces run along the open part of the face and may turn the corner of a slit's end; no slanted way may.
            foreach (StencilWay way in problem.Operator.Ways.Where(way => way.Right * way.Right + way.Up * way.Up > 1))
            {
                for (int cell = 0; cell < way.Conductance.Length; cell++)
                {
                    if (!(way.Conductance[cell] > 0)) continue;
                    Point2 from = problem.Cells.CentroidOf(cell), to = problem.Cells.CentroidOf(cell + way.Up * problem.Cells.Grid.Columns + way.Right);
                    Crosses(from, to, At(-length, 0), At(length, 0)).ShouldBeFalse($"({way.Right}, {way.Up}) from cell {cell}");
                }
            }

            Point2 At(double along, double across) => new(centre.X + along * x - across * y, centre.Y + along * y + across * x);
        },
        iter: 50);

    [Theory]
    [InlineData(4, 45)]
    [InlineData(20, 33)]
    [InlineData(100, 8)]
    [InlineData(100, 29)]
    [InlineData(100, 172)]
    public void Build_SlitFromEdgeToEdge_HoldsTheResinBack(double ratio, double degrees)
    {
        var cloth = new Permeability(ratio * 1e-10, 1e-10, 1e-12, degrees * Math.PI / 180);

        // Two halves joined by a bridge one square wide at the far end only: with the bridge sealed by a zone that hardly conducts nothing passes.
        Ring notched = new([new(0, 0), new(0.1, 0), new(0.1, 0.19), new(0.11, 0.19), new(0.11, 0), new(0.21, 0), new(0.21, 0.2), new(0, 0.2)]);
        Zone[] zones = [new("skin", null, 3e-3, 0.5, cloth), new("plug", Rectangle(0.08, 0.17, 0.13, 0.2), 3e-3, 0.5, new Permeability(1e-22, 1e-22, 1e-22, 0))];
        FillProblem problem = FillProblemBuilder.Build(Panel(notched, Cell, zones, [Feed(Path((0, 0), (0, 0.2)))], Vent(Path((0.21, 0), (0.21, 0.2)))));

        TestSolver.SteadyFlow(problem).ShouldBeLessThan(1e-6 * cloth.K2 * 3e-3);
    }

    [Fact]
    public void Build_FeedLineAcross_CutsEveryWayItCrosses() => Gen.Select(AnyCloth, Gen.Double[0.1, 0.4], Gen.Double[0.1, 0.4]).Sample(
        (cloth, low, high) =>
        {
            Point2 from = new(low, 0.03), to = new(high, 0.47);
            Panel panel = Panel(Rectangle(0, 0, 0.5, 0.5), Cell, [new Zone("skin", null, 3e-3, 0.5, cloth)], [Feed(new LinePath([from, to]))]);
            FillProblem problem = FillProblemBuilder.Build(panel);

            foreach (StencilWay way in problem.Operator.Ways)
            {
                for (int cell = 0; cell < way.Conductance.Length; cell++)
                {
                    if (!(way.Conductance[cell] > 0)) continue;
                    int next = cell + way.Up * problem.Cells.Grid.Columns + way.Right;
                    Crosses(
                        problem.Cells.CentroidOf(cell), problem.Cells.CentroidOf(next), from, to).ShouldBeFalse($"({way.Right}, {way.Up}) from cell {cell}");
                }
            }
        },
        iter: 25);

    [Fact]
    public void Build_FeedLineAcrossAtAnyAngle_PassesTheTrueFlowBesideIt() =>
        Gen.Select(AnyCloth, Gen.Double[0.2, 0.3], Gen.Double[0.2, 0.3], Gen.Double[0, Math.PI]).Sample(
        (cloth, x, y, angle) =>
        {
            // A pressure that falls evenly away from the line on both sides loses nothing in any cell that is not beside an edge of the panel.
            double alongX = Math.Cos(angle), alongY = Math.Sin(angle);
            Panel panel = Panel(Rectangle(0, 0, 0.5, 0.5), Cell, [new Zone("skin", null, 3e-3, 0.5, cloth)], [Feed(new LinePath([Along(-0.19), Along(0.19)]))]);
            FillProblem problem = FillProblemBuilder.Build(panel);
            Dictionary<int, double> fed = problem.Feeds[0].Contacts.ToDictionary(contact => contact.Cell, contact => contact.Conductance);
            List<NodeNeighbour> neighbours = [];
            for (int cell = 0; cell < problem.Operator.CellCount; cell++)
            {
                double distance = DistanceOf(cell), place = (problem.Cells.CentroidX[cell] - x) * alongX + (problem.Cells.CentroidY[cell] - y) * alongY;

                // Ways reach ten squares at most; a line through a middle is held a thousandth of a way off it.
                if (Math.Abs(place) > 0.05 || Math.Abs(distance) > 0.1 || Math.Abs(distance) < 0.02 * Cell) continue;
                problem.Operator.CollectNeighbours(cell, neighbours);
                double loss = fed.GetValueOrDefault(cell) * Math.Abs(distance) + neighbours.Sum(
                    to => to.Conductance * (Math.Abs(distance) - Math.Abs(DistanceOf(to.Node))));
                Math.Abs(loss).ShouldBeLessThan(1e-6 * Cell * problem.Operator.DiagonalOf(cell), $"cell {cell}");
            }

            double DistanceOf(int cell) => (problem.Cells.CentroidY[cell] - y) * alongX - (problem.Cells.CentroidX[cell] - x) * alongY;

            Point2 Along(double distance) => new(x + distance * alongX, y + distance * alongY);
        },
        iter: 30);

    [Fact]
    public void Build_CornersAndCutouts_LeaveNoCellWithoutAWay() => Gen.Select(AnyCloth, Gen.Double[0, Math.PI]).Sample(
        (cloth, turn) =>
        {
            // Cloth that conducts more in every direction fills sooner, half as long again left to the grid; a cell that hangs on a way of next to
            // nothing would take a thousand times as long.
            Ring outline = Turned([new(0, 0), new(0.3, 0), new(0.3, 0.1), new(0.15, 0.1), new(0.15, 0.2), new(0, 0.2)]);
            LinePath feed = new([outline.Corners[0], outline.Corners[5]]);
            Zone zone = new("skin", null, 3e-3, 0.5, cloth);
            Panel panel = Panel(outline, Cell, [zone], [Feed(feed)]);
            Panel slow = panel with { Zones = [zone with { Permeability = cloth with { K1 = cloth.K2 } }] };

            TestSolver.FillClock(FillProblemBuilder.Build(panel)).ShouldBeLessThan(1.5 * TestSolver.FillClock(FillProblemBuilder.Build(slow)));

            Ring Turned(Point2[] corners) => new(
                [.. corners.Select(at => new Point2(at.X * Math.Cos(turn) - at.Y * Math.Sin(turn), at.X * Math.Sin(turn) + at.Y * Math.Cos(turn)))]);
        },
        iter: 15);

    private static bool Crosses(Point2 a, Point2 b, Point2 c, Point2 d) => Turn(a, b, c) * Turn(a, b, d) < 0 && Turn(c, d, a) * Turn(c, d, b) < 0;

    // What is a ten-millionth of a square from the line counts as on it: there the line itself is moved by as much.
    private static double Turn(Point2 a, Point2 b, Point2 c)
    {
        double turn = (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
        return Math.Abs(turn) < 3e-7 * Cell * a.DistanceTo(b) ? 0 : turn;
    }
}

using CsCheck;
using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Flow;

/// <summary>Properties of the problem of any panel: star-shaped outline, a cut-out, a patch, lines and fittings anywhere.</summary>
public class AnyPanelTests
{
    private static readonly Gen<Panel> Panels =
        from corners in Gen.Int[3, 9]
        from radii in Gen.Double[0.14, 0.3].Array[corners]
        from turn in Gen.Double[0, 1]
        from cellSize in Gen.Double[0.008, 0.03]
        from line in Place.Array[1, 4]
        from tube in Place.Array[2, 3]
        from edge in Gen.Int[0, corners - 1]
        from width in Gen.Double[0.001, 0.03]
        select PanelOf(radii, turn, cellSize, line, tube, edge, width);

    private static Gen<Point2> Place => Gen.Select(Gen.Double[-0.05, 0.05], Gen.Double[-0.05, 0.05], (x, y) => new Point2(x, y));

    [Fact]
    public void Build_AnyPanel_IsFiniteAndKeepsTheVolume()
    {
        Panels.Sample(panel =>
        {
            FillProblem problem = FillProblemBuilder.Build(panel);
            LatticeOperator a = problem.Operator;
            foreach (double[] values in (double[][])[a.East, a.North, a.Anchor, problem.PoreVolume]) values.ShouldAllBe(value => double.IsFinite(value) && value >= 0);
            for (int cell = 0; cell < a.CellCount; cell++) (problem.PoreVolume[cell] > 0).ShouldBe(problem.Cells.HasCloth(cell));
            double expected = panel.Zones.Select((zone, k) => zone.Porosity * zone.Thickness * Seen(panel, k)).Sum();
            FillProblemBuilderTests.RelativeError(problem.PoreVolume.Sum(), expected).ShouldBeLessThan(1e-9);
            foreach (var contact in problem.Feeds.Concat(problem.Vents))
            {
                contact.Contacts.Select(c => c.Cell).ShouldBeUnique();
                contact.Contacts.ShouldContain(c => c.Conductance > 0);
                contact.Contacts.ShouldAllBe(c => double.IsFinite(c.Conductance) && c.Conductance >= 0 && problem.Cells.HasCloth(c.Cell));
            }
        }, iter: 200);
    }

    [Fact]
    public void Build_PanelMirroredInItsDiagonal_GivesMirroredNumbers()
    {
        Panels.Sample(panel =>
        {
            FillProblem a = FillProblemBuilder.Build(panel), b = FillProblemBuilder.Build(Transposed(panel));
            int columns = a.Operator.Columns;
            for (int cell = 0; cell < a.Operator.CellCount; cell++)
            {
                int twin = cell % columns * b.Operator.Columns + cell / columns;
                b.PoreVolume[twin].ShouldBe(a.PoreVolume[cell], 1e-6 * a.PoreVolume.Max());
                double largest = Math.Max(a.Operator.Anchor.Max(), a.Operator.East.Max());
                b.Operator.Anchor[twin].ShouldBe(a.Operator.Anchor[cell], 1e-6 * largest);
                b.Operator.North[twin].ShouldBe(a.Operator.East[cell], 1e-6 * largest);
            }
        }, iter: 100);
    }

    [Fact]
    public void Build_PanelOfTurnedClothMirroredInItsDiagonal_ConductsAlike() =>
        Gen.Select(Panels, Gen.Double[0, 2], Gen.Double[-1.5, 1.5], Gen.Double[-1.5, 1.5]).Sample(
        (panel, ratio, first, second) =>
        {
            panel = panel with
            {
                Zones = [.. panel.Zones.Select((zone, k) => zone with { Permeability = new(Math.Pow(10, ratio) * 1e-10, 1e-10, 1e-12, k == 0 ? first : second) })],
            };
            LatticeOperator a = FillProblemBuilder.Build(panel).Operator, b = FillProblemBuilder.Build(Transposed(panel)).Operator;
            a.Ways.SelectMany(way => way.Conductance).Concat(a.Anchor).ShouldAllBe(value => double.IsFinite(value) && value >= 0);
            double largest = a.Ways.Max(way => way.Conductance.Max()) + a.Anchor.Max();
            for (int cell = 0; cell < a.CellCount; cell++)
                b.DiagonalOf(cell % a.Columns * b.Columns + cell / a.Columns).ShouldBe(a.DiagonalOf(cell), 1e-6 * largest, $"cell {cell}");
        },
        iter: 30);

    private static Panel PanelOf(double[] radii, double turn, double cellSize, Point2[] line, Point2[] tube, int edge, double width)
    {
        Point2[] corners = [.. radii.Select((radius, k) =>
        {
            double angle = 2 * Math.PI * (k + turn) / radii.Length;
            return new Point2(radius * Math.Cos(angle), radius * Math.Sin(angle));
        })];
        Zone[] zones =
        [
            ZoneOf("skin", 2e-3, 0.5, 1e-10, 3e-10),
            ZoneOf("patch", 5e-3, 0.6, 5e-10, 2e-10, 0, Rectangle(-0.03, -0.02, 0.04, 0.05)),
        ];
        Feed onEdge = Feed(new LinePath([corners[edge], corners[(edge + 1) % corners.Length]]), width);
        return Panel(new Ring(corners), cellSize, zones, [onEdge, Feed(new LinePath(line), width)], Vent(new LinePath(tube), VentKind.Tube, width));
    }

    private static double Seen(Panel panel, int zone)
    {
        double patch = 0.07 * 0.07;
        return zone == 1 ? patch : Math.Abs(panel.Region.Outline.SignedArea) - patch;
    }

    private static Panel Transposed(Panel panel)
    {
        return panel with
        {
            Region = new(Flip(panel.Region.Outline), []),
            Zones = [.. panel.Zones.Select(zone => zone with
            {
                Area = zone.Area is Ring area ? Flip(area) : null,
                Permeability = zone.Permeability with { K1 = zone.Permeability.K2, K2 = zone.Permeability.K1, Angle = -zone.Permeability.Angle },
            })],
            Feeds = [.. panel.Feeds.Select(feed => feed with { Path = FlipPath(feed.Path) })],
            Vents = [.. panel.Vents.Select(vent => vent with { Path = FlipPath(vent.Path) })],
        };

        static Ring Flip(Ring ring) => new([.. ring.Corners.Select(c => new Point2(c.Y, c.X))]);
        static LinePath FlipPath(LinePath path) => new([.. path.Points.Select(c => new Point2(c.Y, c.X))]);
    }
}

using System.Collections.Concurrent;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.EventByEvent;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Panels with mesh, peel ply and core against a scheme that fills one cell after the other with exact steps.</summary>
public sealed class LayeredPanelTests
{
    private static readonly Permeability Open = new(3e-9, 2e-9, 1e-8, 0);

    /// <summary>Names of the panels.</summary>
    public static TheoryData<string> Names => [.. Panels.Keys];

    private static Dictionary<string, Panel> Panels { get; } = new()
    {
        ["mesh over a part, line inside"] = Plate() with
        {
            FlowMeshes = [new("mesh", Shapes.Box(0.01, 0.013, 0.17, 0.15), PanelFace.BagSide, 1e-3, 0.85, Open)],
            Feeds = [new Feed("F1", new LinePath([new(0.03, 0.041), new(0.15, 0.058)]), 0.012)],
        },
        ["mesh on both sides, peel ply"] = Plate() with
        {
            FlowMeshes = [new("above", Shapes.Box(0, 0, 0.15, 0.2), PanelFace.BagSide, 1e-3, 0.85, Open), new("below", Shapes.Box(0, 0, 0.1, 0.1), PanelFace.ToolSide, 5e-4, 0.8, Open)],
            PeelPly = new(2e-4, 0.6, new(1e-11, 1e-11, 1e-12, 0)),
            SubLayers = 2,
        },
        ["plain core with holes, fitting"] = Plate() with
        {
            Cores = [new("foam", Shapes.Box(0.053, 0.04, 0.16, 0.17), 0.4, 0.01, 0.02, new(0, 0, 1e-9, 0))],
            Feeds = [new Feed("F1", new LinePath([new(0.04, 0.1)]), 0.012)],
        },
        ["turned laminate under a mesh, line inside"] = Plate() with
        {
            Zones = [MeshStrip.Laminate(5e-12) with { Permeability = new(4e-10, 0.4e-10, 5e-12, 0.5) }],
            FlowMeshes = [new("mesh", Shapes.Box(0, 0, 0.15, 0.2), PanelFace.BagSide, 1e-3, 0.85, Open)],
            Feeds = [new Feed("F1", new LinePath([new(0.03, 0.041), new(0.17, 0.058)]), 0.012)],
            SubLayers = 3,
        },
        ["line with a bore, hose and gap on a mesh"] = Plate() with
        {
            FlowMeshes = [new("mesh", Shapes.Box(0, 0, 0.15, 0.2), PanelFace.BagSide, 1e-3, 0.85, Open)],
            Feeds = [new Feed("F1", new LinePath([new(0.03, 0.041), new(0.17, 0.058)]), 0.012) { Bore = 6e-3, Hose = new(8e-3, 1) }],
            Gaps = [new("G1", new LinePath([new(0, 0), new(0.2, 0)]), 2e-3, null)],
            SubLayers = 2,
        },
        ["grooved core, mesh, nearly tight laminate"] = Plate() with
        {
            Zones = [MeshStrip.Laminate(1e-15)],
            Cores = [new("balsa", Shapes.Box(0, 0.04, 0.2, 0.16), 0.5, 0.01, 0.05, new(2.8e-9, 0, 1e-9, 0))],
            FlowMeshes = [new("mesh", Shapes.Box(0, 0, 0.1, 0.2), PanelFace.BagSide, 1e-3, 0.85, Open)],
            SubLayers = 4,
        },
    };

    private static readonly ConcurrentDictionary<string, Lazy<PanelFill>> Fills = new();

    [Theory]
    [MemberData(nameof(Names))]
    public void Fill_OfALayeredPanel_IsThatOfTheSchemeOfEvents(string name)
    {
        // Source: as for one layer; nothing in the complementarity problem knows how the nodes are arranged (derived). Case: 16 × 16 squares, three
        // to six layers, one with turned laminate, one with hose, bore and gap.
        // Expected: the scheme's full cells, shares and last clock. Tolerance: identical sets, 1e-6 on a share and on the clock; mass 1e-9.
        (FillProblem problem, FillMap map, CellByCellFill events) = FillOf(name);

        foreach (CellByCellState expected in events.States)
        {
            FillState observed = Chain.State(map, expected.Clock);
            int differing = Enumerable.Range(0, expected.Full.Length).Count(node => observed.AccumulatedPressure[node] > 0 != expected.Full[node]);
            double worst = observed.Saturation.Zip(expected.Saturation, static (a, b) => Math.Abs(a - b)).Max();
            string where = $"{name}, {problem.Operator.Layers} layers of {Chain.GridOf(problem)}, {expected.Clock / map.FillClock:G3} of the fill: {differing} nodes differ, largest difference of a share {worst:G3}, mass error {observed.MassBalanceError:G3}";
            TestContext.Current.TestOutputHelper?.WriteLine(where);
            differing.ShouldBe(0, where);
            worst.ShouldBeLessThanOrEqualTo(1e-6, where);
        }

        new AccuracyRecord(
            $"{name}, fill against the scheme of events", "exact steps", events.FillClock, map.FillClock, "", Chain.GridOf(problem),
            InTable: false).ShouldHold(1e-6);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Arrival_InEveryNode_IsTheHalfFullClock(string name)
    {
        // Source and cases as above. Tolerance 0.1 % of the fill on both sides, as for one layer; 0.4 % in between, where no picture shows it.
        (FillProblem problem, FillMap map, CellByCellFill events) = FillOf(name);
        HashSet<int> sides = [.. problem.BagSide, .. problem.ToolSide];
        double worst = 0;
        int worstNode = -1;
        for (int node = 0; node < problem.PoreVolume.Length; node++)
        {
            if (problem.PoreVolume[node] == 0) continue;
            double difference = Math.Abs(map.Arrival[node] - events.HalfFullClock[node]) / events.FillClock;
            if (!sides.Contains(node)) difference /= 4;
            if (!(difference <= worst)) (worst, worstNode) = (difference, node);
        }

        worst.ShouldBeLessThanOrEqualTo(
            1e-3, $"{name}: node {worstNode}, {map.Arrival[Math.Max(0, worstNode)]:G6} instead of {events.HalfFullClock[Math.Max(0, worstNode)]:G6}");
    }

    [Fact]
    public void Forecast_OfALayeredPanel_KeepsItsMass()
    {
        // Source: conservation. Case: mesh over a part, tube vent that drinks early. Tolerance 1e-9 of the resin drawn, judged by the chain; the
        // part's resin apart from the mesh's.
        Panel panel = Panels["mesh over a part, line inside"] with { Vents = [new Vent("V1", new LinePath([new(0.2, 0), new(0.2, 0.2)]), 0.012, VentKind.Tube)] };
        var forecast = Chain.Predict(panel);

        forecast.ResinInMesh.ShouldBe(0.16 * 0.137 * 0.85e-3, 1e-4 * forecast.ResinInMesh);
        forecast.ResinInPreform.ShouldBe(0.2 * 0.2 * 1.5e-3, 1e-4 * forecast.ResinInPreform);
        forecast.ResinIn.Sum().ShouldBe(
            forecast.ResinInPreform + forecast.ResinInMesh + forecast.Vents.Sum(vent => vent.ResinOut), 1e-8 * forecast.ResinInPreform);
    }

    private static PanelFill FillOf(string name) => Fills.GetOrAdd(name, static name => new(() =>
    {
        FillMap map = Chain.Map(Chain.Problem(Panels[name]));
        return new(map.Problem, map, CellByCellFill.Run(map.Problem, [0.1 * map.FillClock, 0.4 * map.FillClock, 0.8 * map.FillClock]));
    })).Value;

    private static Panel Plate() => Chain.ReferencePanel(
        Shapes.Rectangle(0.2, 0.2), 0.0125, new LinePath([new(0, 0), new(0, 0.2)]), new LinePath([new(0.19, 0.1)])) with
    {
        Zones = [MeshStrip.Laminate(5e-12)],
    };

    private sealed record PanelFill(FillProblem Problem, FillMap Map, CellByCellFill Events);
}

using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.EventByEvent;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>The two ends of what layers can do: so open to each other that they are one, so tight that they know nothing of each other.</summary>
public sealed class LayersTogetherTests
{
    private const double CellSize = 0.02;

    [Theory]
    [InlineData(PanelFace.BagSide)]
    [InlineData(PanelFace.ToolSide)]
    public void Layers_WideOpenToEachOther_FillAsOne(PanelFace face)
    {
        // Source: layers in parallel, K = ΣKh/Σh, φ = Σφh/Σh (derived). Case: mesh 1 mm, 3e-9 m², φ 0.85 with laminate 3 mm, 1e-10 m², φ 0.5, K3 =
        // 1e-6 m² in both, L = 1 m.
        // Expected: 712.12 s. Tolerance 0.1 %: the lag that K3 leaves is ℓ = 0.1 mm of 1 m.
        FillProblem problem = Chain.Problem(MeshStrip.Of(CellSize, MeshStrip.Laminate(1e-6), null, MeshStrip.Mesh(1e-6, face: face)));
        double time = CellByCellFill.Run(problem, []).FillClock / Reference.ClockRate;

        Chain.FillTime(problem).ShouldBe(time, 1e-6 * time);
        new AccuracyRecord($"mesh and laminate as one, {face}", "layers in parallel, derived", 712.1212, time, "s", Chain.GridOf(problem)).ShouldHold(1e-3);
    }

    [Fact]
    public void Forecast_OfLayersOpenToEachOther_IsThatOfOneLayer()
    {
        // Source and case as above, through the whole chain. Expected: 712.12 s and a lag below a square, which
        // is 1 % of the length or 2 % of the time at the end. Tolerance 0.1 %: as above.
        Forecast forecast = Chain.Predict(MeshStrip.Of(CellSize / 2, MeshStrip.Laminate(1e-6), null, MeshStrip.Mesh(1e-6)));

        new AccuracyRecord(
            "mesh and laminate as one, whole chain", "layers in parallel, derived", 712.1212, forecast.FillTime!.Value, "s",
            Chain.GridOf(forecast.Map.Problem), InTable: false).ShouldHold(1e-3);
        forecast.Lag!.LargestLag.ShouldBeLessThan(0.02 * forecast.EndTime);
        forecast.Findings.ShouldNotContain(finding => finding.Kind == FindingKind.ToolSideBehind);
    }

    [Fact]
    public void Layers_TightToEachOther_FillAsTwoPanels()
    {
        // Source: nothing passes through K3 = 0. Case: the same strip with K3 1e-30 m². Expected: each cell of the mesh and of the laminate at the
        // clock of a panel of its own.
        // Tolerance 1e-9: two runs of one scheme.
        FillProblem both = Chain.Problem(MeshStrip.Of(CellSize, MeshStrip.Laminate(1e-30), 3, MeshStrip.Mesh(1e-30)));
        FillProblem laminate = Chain.Problem(MeshStrip.Of(CellSize, MeshStrip.Laminate(1e-30), null));
        FillProblem mesh = Chain.Problem(MeshStrip.Of(CellSize, new Zone("mesh", null, MeshStrip.MeshThickness, MeshStrip.MeshPorosity, new(MeshStrip.MeshPermeability, MeshStrip.MeshPermeability, 1e-30, 0)), null));
        double[] together = CellByCellFill.Run(both, []).HalfFullClock, laminateAlone = CellByCellFill.Run(laminate, []).HalfFullClock, meshAlone = CellByCellFill.Run(mesh, []).HalfFullClock;

        for (int cell = 0; cell < laminateAlone.Length; cell++)
        {
            for (int layer = 0; layer < 3; layer++) (
                together[layer * laminateAlone.Length + cell] / laminateAlone[cell]).ShouldBe(1, 1e-9, $"sub-layer {layer}, cell {cell}");
            (together[3 * laminateAlone.Length + cell] / meshAlone[cell]).ShouldBe(1, 1e-9, $"mesh, cell {cell}");
        }
    }

    [Fact]
    public void SubLayers_WithoutAnythingBetweenThem_FillAsOneLayer()
    {
        // Source: symmetry; sub-layers of one laminate fed through the edge have no reason to part. Case: 1 and 4 sub-layers. Tolerance 1e-9: rounding.
        double one = CellByCellFill.Run(Chain.Problem(MeshStrip.Of(CellSize, MeshStrip.Laminate(5e-12), 1)), []).FillClock;
        FillProblem problem = Chain.Problem(MeshStrip.Of(CellSize, MeshStrip.Laminate(5e-12), 4));

        problem.Operator.Layers.ShouldBe(4);
        new AccuracyRecord(
            "four sub-layers of one laminate", "symmetry", one, CellByCellFill.Run(problem, []).FillClock, "", Chain.GridOf(problem)).ShouldHold(1e-9);
    }

    [Fact]
    public void Core_ThatPassesNothing_KeepsTheSkinsApart()
    {
        // Source: two skins with nothing between them but a plain core are two panels. Case: feed on the outline, core without holes over the whole
        // strip. Expected: both skins at the clock of a panel of the same cloth, whatever their thickness; nothing in the core. Tolerance 1e-9:
        // rounding.
        Panel panel = MeshStrip.Of(CellSize, MeshStrip.Laminate(5e-12), null) with { Cores = [new("core", null, 0.3, 0.01, 0.01, new(0, 0, 0, 0))] };
        FillProblem problem = Chain.Problem(panel);
        double[] cells = CellByCellFill.Run(problem, []).HalfFullClock, alone = CellByCellFill.Run(
            Chain.Problem(MeshStrip.Of(CellSize, MeshStrip.Laminate(5e-12), null)), []).HalfFullClock;

        problem.Operator.Layers.ShouldBe(3);
        for (int cell = 0; cell < alone.Length; cell++)
        {
            (cells[cell] / alone[cell]).ShouldBe(1, 1e-9);
            (cells[2 * alone.Length + cell] / alone[cell]).ShouldBe(1, 1e-9);
            problem.PoreVolume[alone.Length + cell].ShouldBe(0);
        }
    }

    [Fact]
    public void Skins_BesideACore_FillAsOneLaminate()
    {
        // Source: where there is no core the skins lie on each other. Case: a feed through the mesh-less top of the strip's first half, core in the
        // far corner only, so small that it hardly matters; the laminate cut into two skins. Expected: the clock of the laminate in two sub-layers
        // without a core. Tolerance 0.2 %: the film between the skins holds 0.1 % of one.
        Panel without = MeshStrip.Of(CellSize, MeshStrip.Laminate(5e-12), 2, MeshStrip.Mesh(1e-8));
        Panel with = without with { Cores = [new("core", Shapes.Box(1.5, 0, 1.6, CellSize), 0.5, 0.01, 0.01, new(0, 0, 0, 0))] };
        FillProblem problem = Chain.Problem(with);
        double expected = CellByCellFill.Run(Chain.Problem(without), []).FillClock, observed = CellByCellFill.Run(problem, []).FillClock;

        problem.PoreVolume.Sum().ShouldBe(Chain.Problem(without).PoreVolume.Sum(), 1e-12 * problem.PoreVolume.Sum());
        new AccuracyRecord("skins beside a core", "two sub-layers", expected, observed, "", Chain.GridOf(problem)).ShouldHold(2e-3);
    }
}

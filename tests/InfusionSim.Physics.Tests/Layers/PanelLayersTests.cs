using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Layers;

public class PanelLayersTests
{
    private static readonly Permeability Open = new(3e-9, 3e-9, 1e-8, 0);
    private static readonly FlowMesh Mesh = new("mesh", null, PanelFace.BagSide, 1e-3, 0.85, Open);
    private static readonly Core Foam = new("foam", Rectangle(0.1, 0, 0.2, 0.1), 0.25, 0.01, 0.01, new(0, 0, 1e-9, 0));

    [Fact]
    public void Panel_WithoutMeshCoreAndPeelPly_IsOneLayerOfItsOwnZones()
    {
        Panel panel = Strip(0.3, 0.1, 0.01, Cloth);

        Layer layer = PanelLayers.Of(panel).Layers.ShouldHaveSingleItem();

        layer.Kind.ShouldBe(LayerKind.Laminate);
        layer.Zones.ShouldBeSameAs(panel.Zones);
    }

    [Fact]
    public void Panel_WithEverything_StacksItFromTheMouldToTheBag()
    {
        Panel panel = Strip(0.3, 0.1, 0.01, Cloth) with
        {
            FlowMeshes = [Mesh, Mesh with { Name = "below", Face = PanelFace.ToolSide }, Mesh with { Name = "patch", Area = Rectangle(0, 0, 0.1, 0.1) }],
            PeelPly = new(2e-4, 0.6, new(1e-11, 1e-11, 1e-12, 0)),
            Cores = [Foam],
            SubLayers = 4,
        };

        PanelLayers stack = PanelLayers.Of(panel);

        stack.Layers.Select(layer => layer.Kind).ShouldBe([
            LayerKind.ToolSideMesh, LayerKind.Laminate, LayerKind.Core, LayerKind.Laminate, LayerKind.Laminate, LayerKind.Laminate, LayerKind.PeelPly, LayerKind.BagSideMesh]);
        stack.Layers.Where(layer => layer.Kind == LayerKind.Laminate).Sum(layer => layer.Zones[0].Thickness).ShouldBe(Cloth.Thickness, 1e-15);
        stack.Layers[1].Zones[0].Thickness.ShouldBe(0.25 * Cloth.Thickness, 1e-15);
        stack.Layers[^1].Zones.Select(zone => zone.Name).ShouldBe(["mesh", "patch"]);
        (stack.LowestLaminate, stack.UppermostLaminate, stack.SubLayerCount).ShouldBe((1, 5, 4));
    }

    [Fact]
    public void Cores_AtDifferentShares_AreRefusedByName()
    {
        Panel panel = Strip(0.3, 0.1, 0.01, Cloth) with { Cores = [Foam, Foam with { Name = "balsa", ToolSkinShare = 0.5 }] };

        Should.Throw<NotSupportedException>(() => PanelLayers.Of(panel)).Message.ShouldContain("'balsa' lies above 0.5");
    }

    [Theory]
    [InlineData(false, false, null, 1)]
    [InlineData(false, false, 4, 4)]
    [InlineData(false, true, null, 2)]
    [InlineData(false, true, 1, 2)]
    [InlineData(true, true, null, 4)]
    [InlineData(true, false, 1, 1)]
    public void SubLayers_OfAPanel_FollowMeshCoreAndTheUser(bool mesh, bool core, int? asked, int expected)
    {
        Panel panel = Strip(0.3, 0.1, 0.01, Cloth) with { FlowMeshes = mesh ? [Mesh] : [], Cores = core ? [Foam] : [], SubLayers = asked };

        SubLayers.CountFor(panel).ShouldBe(expected);
    }

    [Theory]
    [InlineData(0.02, 3)]
    [InlineData(2.5e-3, 4)]
    [InlineData(1e-3, 4)]
    public void SubLayers_UnderAMesh_AreAsManyAsTheLagOverTheSquareAsksFor(double cellSize, int expected)
    {
        // Lag 45.5 mm: 0.2 · 45.5/2.5 = 3.6, rounded up; never below three nor above four.
        Panel panel = Strip(0.3, 0.1, cellSize, Cloth with { Permeability = new(1e-10, 1e-10, 5e-12, 0) }) with { FlowMeshes = [Mesh] };

        SubLayers.CountFor(panel).ShouldBe(expected);
    }

    [Fact]
    public void Lag_ThroughPeelPly_TakesItAsAResistanceInSeries()
    {
        // 0.2 mm of 1e-12 m² on 3 mm of 5e-12 m²: 3.2/(0.2/1 + 3/5) = 4.0e-12 m² (derived).
        Zone laminate = Cloth with { Permeability = new(1e-10, 1e-10, 5e-12, 0) };

        MeshLags.Under(Mesh, laminate, new PeelPly(2e-4, 0.5, new(1e-11, 1e-11, 1e-12, 0))).ThroughPermeability.ShouldBe(4e-12, 1e-20);
    }

    [Fact]
    public void ClosedForm_NearerThanTheLag_Refuses()
    {
        MeshLag lag = new(1e-3, 3e-9, 0.85, 3e-3, 1e-10, 5e-12, 0.5);

        Should.Throw<ArgumentOutOfRangeException>(() => lag.ClockAt(0.9 * lag.Length));
        lag.ClockAt(lag.Length).ShouldBe(lag.ThroughClock, 1e-9 * lag.ThroughClock);
    }
}

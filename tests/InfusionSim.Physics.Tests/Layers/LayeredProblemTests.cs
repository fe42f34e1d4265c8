using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Panels;
using static InfusionSim.Physics.Tests.Flow.TestPanels;

namespace InfusionSim.Physics.Tests.Layers;

public class LayeredProblemTests
{
    private const double CellSize = 0.01;
    private static readonly Zone Laminate = Cloth with { Permeability = new(1e-10, 1e-10, 5e-12, 0) };

    [Fact]
    public void Ways_ThroughTheThickness_AreHalfThicknessesInSeries()
    {
        // Area over half of each layer's thickness over its K3: mesh 1 mm of 1e-8 m², sub-layers of 1 mm of 5e-12 m² (derived).
        FillProblem problem = FillProblemBuilder.Build(Meshed(null));
        int layer = problem.Operator.CellsInLayer;
        double area = CellSize * CellSize, between = area / (1e-3 / 5e-12), toMesh = area / (0.5e-3 / 5e-12 + 0.5e-3 / 1e-8);

        problem.Operator.Layers.ShouldBe(4);
        problem.Operator.Above[7].ShouldBe(between, 1e-9 * between);
        problem.Operator.Above[2 * layer + 7].ShouldBe(toMesh, 1e-9 * toMesh);
        problem.Operator.Above[3 * layer + 7].ShouldBe(0);
    }

    [Fact]
    public void Volume_OfAllLayers_IsThatOfLaminateAndMesh()
    {
        // 0.3 m × 0.1 m of laminate, 3 mm · 0.5, and 0.155 m × 0.1 m of mesh, 1 mm · 0.85.
        FillProblem problem = FillProblemBuilder.Build(Meshed(Rectangle(0, 0, 0.155, 0.1)));

        problem.PartVolume.ShouldBe(0.3 * 0.1 * 1.5e-3, 1e-15);
        problem.PoreVolume.Sum().ShouldBe(0.3 * 0.1 * 1.5e-3 + 0.155 * 0.1 * 0.85e-3, 1e-15);
    }

    [Fact]
    public void Mesh_OverHalfThePanel_ConductsOnlyWhereItLies()
    {
        FillProblem problem = FillProblemBuilder.Build(Meshed(Rectangle(0, 0, 0.15, 0.1)));
        int top = 3 * problem.Operator.CellsInLayer;

        problem.Operator.East[top + 13].ShouldBe(3e-12, 1e-20);
        problem.Operator.East[top + 14].ShouldBe(0);
        problem.PoreVolume[top + 15].ShouldBe(0);
        problem.Operator.Above[top - problem.Operator.CellsInLayer + 15].ShouldBe(0);
        problem.BagSide[14].ShouldBe(top + 14);
        problem.BagSide[15].ShouldBe(top - problem.Operator.CellsInLayer + 15);
        problem.ToolSide[14].ShouldBe(14);
    }

    [Fact]
    public void FeedLine_OnTheOutline_FeedsEveryLayerThroughTheEdge()
    {
        FillProblem problem = FillProblemBuilder.Build(Meshed(null));

        problem.Feeds[0].Contacts.Count.ShouldBe(4 * 10);
        // Each layer by its own permeability × thickness over half a square.
        problem.Feeds[0].Contacts.Sum(contact => contact.Conductance).ShouldBe(0.1 / (CellSize / 2) * (3e-12 + 3e-13), 1e-18);
    }

    [Fact]
    public void FeedLine_InsideThePanel_LiesOnTopAndCutsOnlyWhatItLiesOn()
    {
        // The mesh ends at 0.15 m: the line along y = 0.045 lies on the mesh up to there, on the laminate beyond.
        Panel panel = Meshed(Rectangle(0, 0, 0.15, 0.1)) with { Feeds = [Feed(Path((0.05, 0.045), (0.25, 0.045)))] };
        FillProblem problem = FillProblemBuilder.Build(panel);
        int layer = problem.Operator.CellsInLayer, columns = problem.Operator.Columns, below = 4 * columns;

        foreach (CellContact contact in problem.Feeds[0].Contacts) (contact.Cell / layer).ShouldBe(contact.Cell % columns < 15 ? 3 : 2);
        problem.Operator.North[3 * layer + below + 8].ShouldBe(0);
        problem.Operator.North[2 * layer + below + 8].ShouldBeGreaterThan(0);
        problem.Operator.North[2 * layer + below + 20].ShouldBe(0);
        problem.Operator.North[layer + below + 20].ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Fitting_InsideThePanel_FeedsTheUppermostLayerThere()
    {
        Panel panel = Meshed(Rectangle(0, 0, 0.15, 0.1)) with { Feeds = [Feed(Path((0.075, 0.055))), Feed(Path((0.225, 0.055)))] };
        FillProblem problem = FillProblemBuilder.Build(panel);
        int layer = problem.Operator.CellsInLayer;

        problem.Feeds[0].Contacts.ShouldAllBe(contact => contact.Cell / layer == 3);
        problem.Feeds[1].Contacts.ShouldAllBe(contact => contact.Cell / layer == 2);
    }

    [Fact]
    public void Membrane_InsideThePanel_TouchesTheUppermostLayer()
    {
        Panel panel = Meshed(null) with { Vents = [Vent(Path((0.1, 0.03), (0.2, 0.03)), VentKind.Membrane)] };
        FillProblem problem = FillProblemBuilder.Build(panel);

        problem.Vents[0].Contacts.ShouldAllBe(contact => contact.Cell / problem.Operator.CellsInLayer == 3);
        problem.Operator.Anchor.Count(anchor => anchor > 0).ShouldBe(problem.Feeds[0].Contacts.Count);
    }

    [Fact]
    public void Core_OverAPart_JoinsTheSkinsThroughItsHolesAndBesideIt()
    {
        // Holes 1e-9 m² through 10 mm between skins of 1.5 mm; beside it the skins lie on each other as two sub-layers do (derived).
        Core core = new("foam", Rectangle(0.1, 0, 0.2, 0.1), 0.5, 0.01, 0.01, new(0, 0, 1e-9, 0));
        FillProblem problem = FillProblemBuilder.Build(Meshed(null) with { FlowMeshes = [], Cores = [core], SubLayers = null });
        int layer = problem.Operator.CellsInLayer;
        double area = CellSize * CellSize, skin = 2 * 5e-12 / 1.5e-3 * area, holes = 2 * 1e-9 / 0.01 * area, toHoles = 1 / (1 / skin + 1 / holes);

        problem.Operator.Layers.ShouldBe(3);
        problem.Operator.Above[15].ShouldBe(toHoles, 1e-9 * skin);
        problem.Operator.Above[layer + 15].ShouldBe(toHoles, 1e-9 * skin);
        problem.Operator.Above[5].ShouldBe(skin, 1e-9 * skin);
        problem.Operator.Above[layer + 5].ShouldBe(skin, 1e-9 * skin);
        problem.Operator.East[layer + 15].ShouldBe(0);
        problem.PoreVolume.Sum().ShouldBe(0.3 * 0.1 * 1.5e-3 + 0.1 * 0.1 * 0.01 * 0.01, 1e-12);
    }

    [Fact]
    public void PeelPly_UnderTheMesh_IsALayerOverTheWholePanel()
    {
        FillProblem problem = FillProblemBuilder.Build(Meshed(Rectangle(0, 0, 0.15, 0.1)) with { PeelPly = new(2e-4, 0.6, new(1e-11, 1e-11, 1e-12, 0)) });
        int layer = problem.Operator.CellsInLayer;

        problem.Operator.Layers.ShouldBe(5);
        problem.Stack!.Layers[3].Kind.ShouldBe(LayerKind.PeelPly);
        problem.PoreVolume.Skip(3 * layer).Take(layer).ShouldAllBe(volume => Math.Abs(volume - 1.2e-8) < 1e-16);
        problem.BagSide[25].ShouldBe(3 * layer + 25);
    }

    [Fact]
    public void Mesh_BesideTheCloth_CountsForNothing()
    {
        FillProblem outside = FillProblemBuilder.Build(Meshed(Rectangle(0.4, 0, 0.5, 0.1))), astride = FillProblemBuilder.Build(Meshed(Rectangle(0.2, -0.1, 0.5, 0.2)));

        outside.PoreVolume.Sum().ShouldBe(outside.PartVolume);
        outside.BagSide.ShouldAllBe(node => node / outside.Operator.CellsInLayer == 2);
        (astride.PoreVolume.Sum() - astride.PartVolume).ShouldBe(0.1 * 0.1 * 0.85e-3, 1e-15);
    }

    private static Panel Meshed(Numerics.Geometry.Ring? area) => Strip(0.3, 0.1, CellSize, Laminate) with
    {
        FlowMeshes = [new("mesh", area, PanelFace.BagSide, 1e-3, 0.85, new(3e-9, 3e-9, 1e-8, 0))],
        SubLayers = 3,
    };
}

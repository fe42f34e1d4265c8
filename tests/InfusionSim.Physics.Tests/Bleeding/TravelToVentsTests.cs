using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Bleeding;

public class TravelToVentsTests
{
    [Fact]
    public void Of_PanelWithTwoVents_PassesThroughAllItsPoreVolumeOnce()
    {
        // Flow in times the time from entry, summed over the feeds, is the pore volume (derived in the type's remark).
        Panel panel = Square() with { Vents = [TestPanels.Vent(TestPanels.Path((0.3, 0.05), (0.3, 0.1))), TestPanels.Vent(TestPanels.Path((0.15, 0.2)))] };
        (FillProblem problem, double[] pressure) = Full(panel);
        TravelToVents travel = TravelToVents.Of(problem, pressure);

        double sum = 0;
        foreach (CellContact contact in problem.Feeds[0].Contacts) sum += contact.Conductance * (1 - pressure[contact.Cell]) * travel.FromEntry[contact.Cell];
        double still = Enumerable.Range(0, pressure.Length).Where(node => !double.IsFinite(travel.FromEntry[node])).Sum(node => problem.PoreVolume[node]);
        (sum / (problem.PoreVolume.Sum() - still)).ShouldBe(1, 1e-6);
    }

    [Fact]
    public void Of_PanelUnderAMesh_PassesThroughMeshAndLaminate()
    {
        Panel panel = Square() with
        {
            Vents = [TestPanels.Vent(TestPanels.Path((0.3, 0), (0.3, 0.3)))],
            FlowMeshes = [new("mesh", TestPanels.Rectangle(0, 0, 0.2, 0.3), PanelFace.BagSide, 1e-3, 0.85, new Permeability(3e-9, 3e-9, 3e-9, 0))],
        };
        (FillProblem problem, double[] pressure) = Full(panel);
        TravelToVents travel = TravelToVents.Of(problem, pressure);

        double sum = 0;
        foreach (CellContact contact in problem.Feeds[0].Contacts) sum += contact.Conductance * (1 - pressure[contact.Cell]) * travel.FromEntry[contact.Cell];
        (sum / problem.PoreVolume.Sum()).ShouldBe(1, 1e-6);
    }

    [Fact]
    public void Of_EveryPlaceOfAStrip_TakesLongerTheFartherFromTheVent()
    {
        Panel panel = TestPanels.Strip(0.5, 0.02, 0.005, TestPanels.Cloth) with { Vents = [TestPanels.Vent(TestPanels.Path((0.5, 0), (0.5, 0.02)))] };
        (FillProblem problem, double[] pressure) = Full(panel);
        TravelToVents travel = TravelToVents.Of(problem, pressure);

        // φ (L − x) L/K on the drive clock, in the middle of every square.
        for (int cell = 0; cell < pressure.Length; cell++)
            travel.FromMiddle[cell].ShouldBe(0.5 * (0.5 - problem.Cells.CentroidX[cell]) * 0.5 / 1e-10, 1e-6 * 0.5 * 0.25 / 1e-10);
    }

    [Fact]
    public void Of_PanelWithoutOpenVent_NothingFindsOne()
    {
        Panel panel = Square() with { Vents = [TestPanels.Vent(TestPanels.Path((0.3, 0), (0.3, 0.3)), VentKind.Membrane)] };
        (FillProblem problem, double[] pressure) = Full(panel);
        TravelToVents.Of(problem, pressure).FromMiddle.ShouldAllBe(static clock => double.IsPositiveInfinity(clock));
    }

    private static (FillProblem Problem, double[] Pressure) Full(Panel panel)
    {
        FillProblem problem = FillProblemBuilder.Build(panel);
        return (problem, FillMap.TotalOf(problem, CancellationToken.None).SteadyPressure);
    }

    private static Panel Square() => TestPanels.Panel(
        TestPanels.Rectangle(0, 0, 0.3, 0.3), 0.01, [TestPanels.Cloth], [TestPanels.Feed(TestPanels.Path((0, 0), (0, 0.3)))]);
}

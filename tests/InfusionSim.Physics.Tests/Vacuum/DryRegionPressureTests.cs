using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Tests.Vacuum;

public class DryRegionPressureTests
{
    private const double Room = 293.15;

    [Fact]
    public void Pressure_WithoutALeak_IsThatOfTheVent() =>
        new DryRegionPressure(1e12).PressureWith(1325, new GasLeak(0), Room).ShouldBe(1325, 1e-9);

    [Fact]
    public void Pressure_LargeLeak_GrowsWithItsRoot()
    {
        var region = new DryRegionPressure(1e12);
        (region.PressureWith(0, new GasLeak(0.04), Room) / region.PressureWith(0, new GasLeak(0.01), Room)).ShouldBe(2, 1e-12);
    }

    [Fact]
    public void Resistance_OfHalfTheStrip_IsHalf()
    {
        // L/(3KhW): a region half as long towards the vent has half of it.
        FillProblem problem = FillProblemBuilder.Build(Strip([Vent]));
        double whole = DryRegionPressure.OfDryPanel(problem)!.Resistance;
        bool[] nearVent = [.. Enumerable.Range(0, problem.Operator.NodeCount).Select(cell => problem.Cells.CentroidOf(cell).X > 0.25)];
        (DryRegionPressure.Of(problem, nearVent)!.Resistance / whole).ShouldBe(0.5, 1e-3);
    }

    [Fact]
    public void Region_CutOffFromEveryVent_HasNoPressureOfItsOwn()
    {
        FillProblem problem = FillProblemBuilder.Build(Strip([Vent]));
        bool[] farEnd = [.. Enumerable.Range(0, problem.Operator.NodeCount).Select(cell => problem.Cells.CentroidOf(cell).X < 0.25)];
        DryRegionPressure.Of(problem, farEnd).ShouldBeNull();
        DryRegionPressure.OfDryPanel(FillProblemBuilder.Build(Strip([]))).ShouldBeNull();
    }

    [Fact]
    public void Resistance_UnderAFlowMesh_IsThatOfBothTogether()
    {
        // Mesh and cloth conduct side by side where resin and gas go freely from one to the other: K h adds up.
        Panel plain = Strip([Vent]);
        Zone skin = plain.Zones[0] with { Permeability = new Permeability(1e-10, 1e-10, 1e-7, 0) };
        Panel meshed = plain with { Zones = [skin], FlowMeshes = [new FlowMesh("Mesh1", null, PanelFace.BagSide, 1e-3, 0.8, new Permeability(3e-10, 3e-10, 1e-7, 0))] };
        double alone = Resistance(plain), together = Resistance(meshed);
        (together / alone).ShouldBe(0.5, 1e-3);
    }

    [Fact]
    public void Resistance_BehindAHose_AddsTheHose()
    {
        // The hose stands in series: 128 l/(π d⁴) on top.
        Panel plain = Strip([Vent]), hosed = Strip([Vent with { Hose = new Hose(0.001, 2) }]);
        double hose = 128 * 2 / (Math.PI * Math.Pow(0.001, 4));
        ((Resistance(hosed) - Resistance(plain)) / hose).ShouldBe(1, 1e-3);
    }

    private static Vent Vent => new("V1", new LinePath([new(0.5, 0), new(0.5, 0.02)]), 0.012, VentKind.Tube);

    private static double Resistance(Panel panel) => DryRegionPressure.OfDryPanel(FillProblemBuilder.Build(panel))!.Resistance;

    private static Panel Strip(IReadOnlyList<Vent> vents) => new(
        new Region(new Ring([new(0, 0), new(0.5, 0), new(0.5, 0.02), new(0, 0.02)]), []),
        [new Zone("skin", null, 3e-3, 0.5, new Permeability(1e-10, 1e-10, 1e-12, 0))],
        [new Feed("F1", new LinePath([new(0, 0), new(0, 0.02)]), 0.012)],
        vents,
        [],
        0.005);
}

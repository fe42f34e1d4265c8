using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Network;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Pressure along a feed line with a bore.</summary>
public sealed class FeedLineBoreTests
{
    private const string Source = "p'' = m² p along the line, m² = 8T/(x π r⁴), derived";
    private const double Length = 2, Across = 0.1;

    [Theory]
    [InlineData(1e-10, 3e-13, 0.976042)]
    [InlineData(1.1e-9, 3.3e-12, 0.780532)]
    public void EndPressure_WhenAllIsWet_IsTheInverseHyperbolicCosine(double permeability, double transmissibility, double expected)
    {
        // Source: the line loses T/x of its pressure per length to the vent, so its end holds 1/cosh(mL). Case: 2 m of 10 mm bore on one edge, vent
        // along the opposite edge 0.1 m away.
        (permeability * Reference.Thickness).ShouldBe(transmissibility, 1e-6 * transmissibility);
        Panel panel = new(
            new(Shapes.Rectangle(Across, Length), []),
            [Reference.Isotropic("skin", permeability, Reference.Porosity, Reference.Thickness)],
            [new Feed("F1", new([new(0, 0), new(0, Length)]), 0.012) { Bore = 10e-3 }],
            [new Vent("V1", new([new(Across, 0), new(Across, Length)]), 0.012, VentKind.Tube)],
            [],
            0.01);
        FillProblem problem = Chain.Problem(panel);
        FillMap map = Chain.Map(problem);
        NodeChain chain = problem.Network.Feeds[0]!;
        double end = map.Total.SteadyPressure[chain.First + chain.Count - 1];

        // Tolerance 0.1 %: the closed form lets no resin run along the cloth, which passes a hundredth of what the bore passes.
        new AccuracyRecord($"end of a feed line, T {transmissibility:0.0E0}", Source, expected, end, "of its start", Chain.GridOf(problem)).ShouldHold(1e-3);
        Chain.State(map, 0.3 * map.FillClock);
        Chain.State(map, map.FillClock);
    }
}

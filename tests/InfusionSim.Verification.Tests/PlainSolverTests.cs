using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>
/// The product's solvers against textbook ones that share nothing with them, in turned cloth with a cut-out, a feed line inside and an open vent.
/// </summary>
public sealed class PlainSolverTests
{
    [Theory]
    [InlineData(4, 30)]
    [InlineData(100, 61)]
    public void Fill_OfTurnedCloth_IsThatOfPlainRelaxation(double ratio, double degrees)
    {
        // Source: the same equations, solved by projected successive over-relaxation and by conjugate gradients. Case: two zones, a third and two
        // thirds of the fill.
        FillProblem problem = Problem(ratio, degrees);
        FillMap map = Chain.Map(problem);
        foreach (double share in new[] { 0.33, 0.67 })
        {
            double clock = share * map.FillClock;
            double[] expected = PlainSolver.Saturation(problem, clock);
            FillState state = Chain.State(map, clock);

            // Tolerance 1e-6 of a cell: where relaxation is stopped.
            for (int cell = 0; cell < expected.Length; cell++) state.Saturation[cell].ShouldBe(expected[cell], 1e-6, $"cell {cell} at {share} of the fill");
        }

        double[] plain = PlainSolver.SteadyPressure(problem), steady = Chain.SteadyPressure(problem);
        for (int cell = 0; cell < plain.Length; cell++) steady[cell].ShouldBe(plain[cell], 1e-7, $"pressure of cell {cell}");
    }

    private static FillProblem Problem(double ratio, double degrees)
    {
        const double Size = 8e-3, Side = 40 * Size;
        var cloth = new Permeability(ratio * 1e-10, 1e-10, 1e-12, degrees * Math.PI / 180);
        return Chain.Problem(new Panel(
            new Region(new Ring([new(0, 0), new(Side, 0.02), new(0.9 * Side, Side), new(0.05, 0.95 * Side)]), [Shapes.Box(0.19, 0.12, 0.22, 0.2)]),
            [
                new Zone("skin", null, Reference.Thickness, Reference.Porosity, cloth),
                new Zone("mirror", Shapes.Box(0.15, -1, 1, 1), Reference.Thickness, Reference.Porosity, cloth with { Angle = -cloth.Angle }),
            ],
            [new Feed("F1", new LinePath([new(0.07, 0.08), new(0.11, 0.22)]), 0.012)],
            [new Vent("V1", new LinePath([new(0.25, 0.27)]), 0.006, VentKind.Tube)], [], Size));
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A disc fed round its rim, on a grid that fits it nowhere.</summary>
public sealed class ConvergentDiscTests
{
    private const string Source = "convergent disc, derived";
    private const double Rim = 0.5;

    [Fact]
    [Trait("Speed", "Slow")]
    public void FillTime_OfADiscFedRoundItsRim_ConvergesToTheClosedForm()
    {
        // Source: t = φμR²/(4KΔp). Case: polygon of 1440 corners with the area of the circle, grid moved by 0.37 cell, 25 to 200 cells across.
        // Expected: 625 s.
        int[] counts = [25, 50, 100, 200];
        double[] sizes = [.. counts.Select(across => 2 * Rim / across)];
        double[] errors = new double[sizes.Length];
        for (int k = 0; k < sizes.Length; k++)
        {
            FillProblem problem = Problem(sizes[k]);
            var record = new AccuracyRecord("convergent disc, fill time", Source, 625, Chain.FillTime(problem), "s", Chain.GridOf(problem));
            errors[k] = record.RelativeError;
            // Tolerance 0.3 % at 100 cells across: flow through cut faces is first order in the worst cells, a share of h of all.
            if (k == 2) record.ShouldHold(3e-3);
        }

        // Tolerance: order at least 0.9 over the four grids.
        Convergence.PrintOrder("convergent disc", sizes, errors).ShouldBeGreaterThanOrEqualTo(0.9);
    }

    [Fact]
    public void Clock_AtHalfTheRadius_IsTheClosedForm()
    {
        // Source: t = φμ/(KΔp)[(R² − r²)/4 − (r²/2) ln(R/r)]. Case: read where three quarters of the disc are wet. Expected: 252.1415 s.
        double expected = RoundFronts.InwardClockAt(Rim / 2, Rim, Reference.Permeability, Reference.Porosity) / Reference.ClockRate;
        expected.ShouldBe(252.1415, 5e-5);
        FillProblem problem = Problem(Rim / 50);
        FillMap map = Chain.Map(problem);
        double clock = ClockSearch.WhenReached(map, state => state.FilledFraction, 0.75);

        // Tolerance 0.3 % at 100 cells across, as for the fill.
        new AccuracyRecord(
            "convergent disc, front at half the radius", Source, expected, clock / Reference.ClockRate, "s", Chain.GridOf(problem)).ShouldHold(3e-3);
    }

    private static FillProblem Problem(double cellSize)
    {
        Ring disc = Shapes.Ellipse(new Point2(0, 0), Rim, Rim);
        Point2 corner = disc.LowerLeft();
        return Chain.Problem(
            Chain.ReferencePanel(disc, cellSize, disc.AsPath(), new LinePath([new(0, 0)])),
            new Point2(corner.X - 0.37 * cellSize, corner.Y - 0.37 * cellSize));
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A round fitting in the middle of a wide panel: the front is a circle whose clock knows the fitting's diameter.</summary>
public sealed class FittingTests
{
    private const string Source = "round front, Adams, Russel and Rebenfeld 1988 (from memory)";
    private const double Radius = 0.25;

    [Theory]
    [InlineData(2e-3, 20e-3, 31, 0, 0)]
    [InlineData(2e-3, 10e-3, 61, 0, 0)]
    [InlineData(12e-3, 5e-3, 121, 0, 0)]
    [InlineData(12e-3, 5e-3, 121, 0.31, 0.44)]
    public void Front_OfARoundFitting_IsTheCircleOfItsDiameter(double diameter, double cellSize, int cells, double shiftX, double shiftY)
    {
        // Source: θ = φ/(2K)[R² ln(R/r₀) − (R² − r₀²)/2]. Case: fitting in the middle cell of a square panel wider than the front,
        // once off the cell's middle by a share of a cell. Expected: a disc of R = 0.25 m.
        double side = cells * cellSize;
        var middle = new Point2(side / 2 + shiftX * cellSize, side / 2 + shiftY * cellSize);
        FillProblem problem = Chain.Problem(Chain.ReferencePanel(Shapes.Rectangle(side, side), cellSize, new LinePath([middle]), new LinePath([new(0, 0)])) with
        {
            Feeds = [new Feed("F1", new LinePath([middle]), diameter)],
        });
        double clock = RoundFronts.OutwardClockAt(Radius, diameter / 2, Reference.Permeability, Reference.Porosity);
        var front = new FrontReader(problem.Cells, Chain.State(Chain.Map(problem), clock));

        // Tolerance 0.2 % of the area: what a five-point lattice is off from a continuum at a dozen cells; front within one cell all round.
        new AccuracyRecord(
            $"round front of a fitting Ø {diameter * 1e3} mm, wet area", Source, Math.PI * Radius * Radius * 1e4, front.WetArea * 1e4, "cm²",
            Chain.GridOf(problem)).ShouldHold(2e-3);
        for (int k = 0; k < 72; k++)
        {
            double angle = k * 2 * Math.PI / 72;
            double reach = front.FrontAlong(middle, angle, side);
            Math.Abs(reach - Radius).ShouldBeLessThanOrEqualTo(
                cellSize, $"front at {k * 5}°: expected {Radius} m, observed {reach} m, {Chain.GridOf(problem)}");
        }
    }

    [Theory]
    [InlineData(20e-3, 31, 17)]
    [InlineData(10e-3, 61, 33)]
    public void Front_InClothOfTwoPermeabilities_IsTheEllipseOfTheirRoot(double cellSize, int columns, int rows)
    {
        // Source: stretching by (Ky/Kx)^¼ and (Kx/Ky)^¼ makes the cloth isotropic with K = √(KxKy); a circle of radius r₀ becomes an ellipse that
        // feeds like a circle of half the sum of its semi-axes, r₀/2 [(Kx/Ky)^¼ + (Ky/Kx)^¼] (derived; Adams, Russel and Rebenfeld 1988, from memory).
        // Case: Kx = 4e-10, Ky = 1e-10 m², r₀ = 1 mm, read at 473.944 s. Expected: semi-axes 0.2828427 and 0.1414214 m.
        const double Stretched = 0.2;
        double feedRadius = 1e-3 / 2 * (Math.Sqrt(2) + 1 / Math.Sqrt(2));
        double clock = RoundFronts.OutwardClockAt(Stretched, feedRadius, 2e-10, Reference.Porosity);
        (clock / Reference.ClockRate).ShouldBe(473.9440, 5e-4);
        var middle = new Point2(columns * cellSize / 2, rows * cellSize / 2);
        FillProblem problem = Chain.Problem(Chain.ReferencePanel(Shapes.Rectangle(columns * cellSize, rows * cellSize), cellSize, new LinePath([middle]), new LinePath([new(0, 0)])) with
        {
            Zones = [new Zone("skin", null, Reference.Thickness, Reference.Porosity, new Permeability(4e-10, 1e-10, 1e-12, 0))],
            Feeds = [new Feed("F1", new LinePath([middle]), 2e-3)],
        });
        var front = new FrontReader(problem.Cells, Chain.State(Chain.Map(problem), clock));

        // Tolerance 0.2 % of the area, one cell of the semi-axes: as for the circle.
        string grid = Chain.GridOf(problem);
        new AccuracyRecord(
            "front of a fitting in cloth 4 : 1, wet area", Source, Math.PI * Stretched * Stretched * 1e4, front.WetArea * 1e4, "cm²", grid).ShouldHold(2e-3);
        new AccuracyRecord(
            "front of a fitting in cloth 4 : 1, long semi-axis", Source, Stretched * Math.Sqrt(2) * 1e3, front.FrontAlong(middle, 0, 1) * 1e3, "mm",
            grid).ShouldHold(cellSize / (Stretched * Math.Sqrt(2)));
        new AccuracyRecord(
            "front of a fitting in cloth 4 : 1, short semi-axis", Source, Stretched / Math.Sqrt(2) * 1e3,
            front.FrontAlong(middle, Math.PI / 2, 1) * 1e3, "mm", grid).ShouldHold(cellSize / (Stretched / Math.Sqrt(2)));
    }

    [Fact]
    public void Clock_OfTheSmallFitting_IsThePublishedNumber()
    {
        // Source as above, with r₀ = 1 mm. Expected: 1569.2090 s for R = 0.25 m, worked out by hand. Tolerance: its last digit.
        double time = RoundFronts.OutwardClockAt(Radius, 1e-3, Reference.Permeability, Reference.Porosity) / Reference.ClockRate;

        time.ShouldBe(1569.2090, 5e-4);
    }
}

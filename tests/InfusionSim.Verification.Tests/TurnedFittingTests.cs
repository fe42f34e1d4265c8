using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A round fitting in the middle of a wide panel of turned cloth: the front is an ellipse whose axes lie along the cloth's.</summary>
public sealed class TurnedFittingTests
{
    private const string Source = "front in stretched cloth, Adams, Russel and Rebenfeld 1988 (from memory)";
    private const double FeedRadius = 1e-3;

    [Theory]
    [InlineData(4, 0, 10e-3, 65)]
    [InlineData(4, 30, 10e-3, 65)]
    [InlineData(4, 45, 10e-3, 65)]
    [InlineData(4, 77, 10e-3, 65)]
    public void Front_InTurnedCloth_IsTheTurnedEllipse(double ratio, double degrees, double cellSize, int cells)
    {
        // Source: as in FittingTests, the stretch along the axes of the cloth. Case: K1 = 4e-10, K2 = 1e-10 m², r₀ = 1 mm, read at 473.944 s.
        // Expected: semi-axes 0.2828427 and 0.1414214 m, the long one along K1.
        (double longAxis, double shortAxis, double turned) = Ellipse(ratio, degrees, cellSize, cells, 0.2, out string grid, out double time);
        time.ShouldBe(473.9440, 5e-4);

        // Tolerance 1 % of the axes, 1°: asked for; moments of the whole wet area are read, which the staircase of cells at the front blurs little.
        string problem = $"front of a fitting in cloth {ratio} : 1 at {degrees}°";
        new AccuracyRecord($"{problem}, long semi-axis", Source, 0.2828427e3, longAxis * 1e3, "mm", grid).ShouldHold(1e-2);
        new AccuracyRecord($"{problem}, short semi-axis", Source, 0.1414214e3, shortAxis * 1e3, "mm", grid).ShouldHold(1e-2);
        Math.Abs(turned).ShouldBeLessThanOrEqualTo(1, $"{problem}: off by {turned}°, {grid}");
    }

    [Fact]
    public void Front_InClothOfTwentyToOne_IsTheTurnedEllipse()
    {
        (double longAxis, double shortAxis, double turned) = Ellipse(20, 33, 10e-3, 75, 0.15, out string grid, out _);

        // Tolerance 3 % of the ratio of the axes, 1°: asked for.
        new AccuracyRecord(
            "front of a fitting in cloth 20 : 1 at 33°, ratio of the axes", Source, Math.Sqrt(20), longAxis / shortAxis, "", grid).ShouldHold(3e-2);
        Math.Abs(turned).ShouldBeLessThanOrEqualTo(1, $"off by {turned}°, {grid}");
    }

    [Theory]
    [InlineData(4, 30)]
    [InlineData(20, 33)]
    public void Front_OfAFittingLargerThanASquare_IsTheTurnedEllipse(double ratio, double degrees)
    {
        // Case: r₀ = 12 mm on squares of 5 mm, which takes a cluster of cells; stretched radius 0.1 m, where the circle of the feed still shows by a
        // few percent in the shape.
        (double longAxis, double shortAxis, double turned) = Ellipse(ratio, degrees, 5e-3, 95, 0.1, out string grid, out _, 12e-3);

        // Tolerance 1 % of the area: that of the equivalent radius of the cluster.
        new AccuracyRecord(
            $"front of a fitting Ø 24 mm in cloth {ratio} : 1 at {degrees}°, area of the ellipse", Source, 0.01, longAxis * shortAxis, "m²/π",
            grid).ShouldHold(1e-2);
        Math.Abs(turned).ShouldBeLessThanOrEqualTo(1, $"off by {turned}°, {grid}");
    }

    private static (double Long, double Short, double Turned) Ellipse(
        double ratio, double degrees, double cellSize, int cells, double stretched, out string grid, out double time, double feedRadius = FeedRadius)
    {
        double angle = degrees * Math.PI / 180, side = cells * cellSize, root = Math.Sqrt(Math.Sqrt(ratio));
        double clock = RoundFronts.OutwardClockAt(stretched, feedRadius / 2 * (root + 1 / root), 1e-10 * Math.Sqrt(ratio), Reference.Porosity);
        time = clock / Reference.ClockRate;
        var middle = new Point2(side / 2, side / 2);
        FillProblem problem = Chain.Problem(Chain.ReferencePanel(Shapes.Rectangle(side, side), cellSize, new LinePath([middle]), new LinePath([new(0, 0)])) with
        {
            Zones = [new Zone("skin", null, Reference.Thickness, Reference.Porosity, new Permeability(ratio * 1e-10, 1e-10, 1e-12, angle))],
            Feeds = [new Feed("F1", new LinePath([middle]), 2 * feedRadius)],
        });
        grid = Chain.GridOf(problem);
        double[] saturation = Chain.State(Chain.Map(problem), clock).Saturation;

        // An ellipse of semi-axes a and b has the second moments πa³b/4 and πab³/4 about its axes; a square adds its own.
        double area = 0, xx = 0, yy = 0, xy = 0;
        for (int cell = 0; cell < problem.Cells.Area.Length; cell++)
        {
            double wet = saturation[cell] * problem.Cells.Area[cell], x = problem.Cells.CentroidX[cell] - middle.X, y = problem.Cells.CentroidY[cell] - middle.Y;
            area += wet;
            xx += wet * (x * x + cellSize * cellSize / 12);
            yy += wet * (y * y + cellSize * cellSize / 12);
            xy += wet * x * y;
        }

        double mean = (xx + yy) / 2, spread = Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy);
        double turned = Math.Atan2(2 * xy, xx - yy) / 2 * 180 / Math.PI - degrees;
        return (2 * Math.Sqrt((mean + spread) / area), 2 * Math.Sqrt((mean - spread) / area), turned - 180 * Math.Round(turned / 180));
    }
}

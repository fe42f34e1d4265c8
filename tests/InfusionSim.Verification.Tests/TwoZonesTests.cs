using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A straight front through two zones in series.</summary>
public sealed class TwoZonesTests
{
    private const string Source = "zones in series, derived";
    private const double Length = 0.5;
    private const double Fast = 0.3;
    private static readonly ZonesInSeries.Part FastPart = new(Fast, 2e-10, 0.55, 3e-3);
    private static readonly ZonesInSeries.Part SlowPart = new(Length - Fast, 5e-11, 0.45, 3e-3);

    [Theory]
    [InlineData(false, 877.5)]
    [InlineData(true, 1927.5)]
    public void FillTime_WithTheMeetingOnAFace_IsExact(bool fromTheSlowEnd, double expected)
    {
        // Source: sum of resistances behind the front. Case: K 2e-10, φ 0.55 over 0.3 m, then K 0.5e-10, φ 0.45 over 0.2 m; and fed from the other end.
        ZonesInSeries.Part[] parts = fromTheSlowEnd ? [SlowPart, FastPart] : [FastPart, SlowPart];
        (ZonesInSeries.FillClock(parts) / Reference.ClockRate).ShouldBe(expected, 1e-9);
        FillProblem problem = Chain.Problem(Strip(Length / 100, fromTheSlowEnd));
        double time = Chain.FillTime(problem);

        // Tolerance 1e-6: with harmonic means on the faces the sum over cells equals the integral.
        new AccuracyRecord($"two zones in series{(fromTheSlowEnd ? " reversed" : "")}", Source, expected, time, "s", Chain.GridOf(problem)).ShouldHold(1e-6);
    }

    [Theory]
    [InlineData(false, 877.5)]
    [InlineData(true, 1927.5)]
    public void FillTime_WithTheMeetingInsideACell_IsSecondOrder(bool fromTheSlowEnd, double expected)
    {
        // Source and case as above, the zones meeting 0.6 of the way through a cell on 21, 41, 81 and 161 cells.
        int[] counts = [21, 41, 81, 161];
        double[] sizes = [.. counts.Select(count => Length / count)];
        double[] errors = [.. sizes.Select(size => Chain.FillTime(Chain.Problem(Strip(size, fromTheSlowEnd))) / expected - 1)];

        // Tolerance: order 2, because only the one shared cell is wrong and its share of the fill falls as h².
        Convergence.PrintOrder($"two zones meeting in a cell{(fromTheSlowEnd ? ", reversed" : "")}", sizes, errors).ShouldBeGreaterThan(1.85);
    }

    private static Panel Strip(double cellSize, bool fromTheSlowEnd)
    {
        const double Width = 0.02;
        double feed = fromTheSlowEnd ? Length : 0;
        return Chain.ReferencePanel(Shapes.Rectangle(Length, Width), cellSize, Across(feed), Across(Length - feed)) with
        {
            Zones =
            [
                Reference.Isotropic("fast", FastPart.Permeability, FastPart.Porosity, FastPart.Thickness, Shapes.Box(0, 0, Fast, Width)),
                Reference.Isotropic("slow", SlowPart.Permeability, SlowPart.Porosity, SlowPart.Thickness, Shapes.Box(Fast, 0, Length, Width)),
            ],
        };

        static LinePath Across(double x) => new([new Point2(x, 0), new Point2(x, Width)]);
    }
}

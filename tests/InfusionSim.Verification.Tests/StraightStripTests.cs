using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>A straight front fed on the face of the first cell, on whole and on cut cells.</summary>
public sealed class StraightStripTests
{
    private const string Source = "straight front, derived";
    private const double Length = 0.5;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(100)]
    public void FillTime_OnWholeCells_IsExactForAnyNumberOfThem(int cells)
    {
        // Source: with the feed on the face Σ(k − ½) = n²/2, so the sum over cells equals the integral for every n (derived).
        // Case: L = 0.5 m, one to three cells wide, reference cloth. Expected: φμL²/(2KΔp) = 1250 s.
        Forecast forecast = Chain.Predict(Strip(Length / cells, Length / cells * Math.Min(3, cells)));

        // Tolerance 1e-6: nothing but the linear solver stands between the two.
        new AccuracyRecord(
            $"strip of {cells} {(cells == 1 ? "square" : "squares")}, fill time", Source, 1250, forecast.FillTime!.Value, "s",
            Chain.GridOf(forecast.Map.Problem), InTable: cells is 1 or 100).ShouldHold(1e-6);
    }

    [Theory]
    [InlineData(7.3, 0)]
    [InlineData(23.7, 0)]
    [InlineData(61.3, 0)]
    [InlineData(7, 0.37)]
    [InlineData(23.7, 0.61)]
    [InlineData(61.3, 0.02)]
    [InlineData(100, 0.98)]
    public void FillTime_WithFirstAndLastCellCut_IsExactToo(double cellsInLength, double shift)
    {
        // Source: with the pressure at the middle of what a cell owns, Σ dₖ(L − xₖ) is the trapezoidal rule of a straight line, exact for any
        // division (derived).
        // Case: cells that do not divide L, grid moved left by a share of a cell. Expected: 1250 s.
        double size = Length / cellsInLength;
        Panel strip = Strip(size, 0.1);
        FillProblem problem = Chain.Problem(strip, new Point2(-shift * size, 0));
        double time = Chain.FillTime(problem);

        // Tolerance 1e-6: as for whole cells.
        new AccuracyRecord(
            $"strip of {cellsInLength} squares, first and last cut, fill time", Source, 1250, time, "s", Chain.GridOf(problem),
            InTable: shift == 0.61).ShouldHold(1e-6);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(17)]
    [InlineData(26.565051177)]
    [InlineData(30)]
    [InlineData(45)]
    public void FillTime_OfAStripTurnedOffTheGrid_IsThatOfTheStraightOne(double degrees)
    {
        // Source: a straight front knows no grid. Case: L = 0.5 m, 0.2 m wide, turned, so that all four edges cut cells askew; at 45° and at
        // arctan ½ every cut repeats itself along the edge and errors add up. Expected: 1250 s.
        double turn = degrees * Math.PI / 180;
        double[] sizes = [20e-3, 10e-3, 5e-3, 2.5e-3];
        var outline = Shapes.Rectangle(Length, 0.2);
        AccuracyRecord[] records = [.. sizes
            .Select(size => Chain.Problem(Chain.ReferencePanel(
                outline.Turned(turn), size, new LinePath(
                    [new Point2(0, 0).Turned(turn), new Point2(0, 0.2).Turned(turn)]), new LinePath([new Point2(0.49, 0.1).Turned(turn)]))))
            .Select(problem => new AccuracyRecord($"strip turned {degrees:0.#}°, fill time", Source, 1250, Chain.FillTime(problem), "s", Chain.GridOf(problem), InTable: degrees is 17 or 45))];
        Convergence.PrintOrder($"strip turned {degrees:0.#}°", sizes, [.. records.Select(record => record.RelativeError)]);

        // Tolerance 0.1 % on every grid from 25 cells in the length on: a third of what the other shapes are allowed at 100. No order is asked for,
        // because the errors are so small that they change sign.
        foreach (AccuracyRecord record in records) Math.Abs(record.RelativeError).ShouldBeLessThanOrEqualTo(1e-3, record.ToString());
        records[2].ShouldHold(1e-3);
    }

    [Theory]
    [InlineData(0.25)]
    [InlineData(0.5)]
    [InlineData(0.75)]
    public void HalfFullClock_UnderRefinement_IsSecondOrder(double place)
    {
        // Source: x² = 2Kθ/φ. Case: the cell that begins at a quarter, half, three quarters of L, on 20, 40, 80, 160 cells.
        // Expected: clock of its middle. Tolerance: order 2 ± 0.15, because the half-full clock is off by φh²/(8K).
        int[] counts = [20, 40, 80, 160];
        double[] sizes = [.. counts.Select(count => Length / count)];
        double[] errors = [.. counts.Select(count => ErrorAt(count, (int)Math.Round(place * count)))];

        Convergence.PrintOrder($"strip, half-full clock at {place} L", sizes, errors).ShouldBe(2, 0.15);
    }

    [Fact]
    public void Arrivals_AtQuarterHalfAndThreeQuarters_FollowTheSquareRootOfTime()
    {
        // Source: x² = 2KΔp t/(φμ). Case: timing marks on 100 cells. Expected: 78.125, 312.5, 703.125 s.
        Panel strip = Strip(Length / 100, 0.02) with
        {
            TimingMarks = [new("quarter", new(0.125, 0.01)), new("half", new(0.25, 0.01)), new("three quarters", new(0.375, 0.01))],
        };
        Forecast forecast = Chain.Predict(strip);

        // Tolerance 0.1 %: (h/2x)² is 4e-4 at the first mark.
        double[] expected = [78.125, 312.5, 703.125];
        for (int k = 0; k < expected.Length; k++)
            new AccuracyRecord(
                $"strip, arrival at mark {strip.TimingMarks[k].Name}", Source, expected[k], forecast.TimingMarkArrivals[k]!.Value, "s",
                Chain.GridOf(forecast.Map.Problem)).ShouldHold(1e-3);
    }

    private static double ErrorAt(int cells, int cell)
    {
        FillMap map = Chain.Map(Chain.Problem(Strip(Length / cells, Length / cells)));
        double low = 0, high = map.FillClock;
        for (int k = 0; k < 40; k++)
        {
            double middle = (low + high) / 2;
            if (map.StateAt(middle).Saturation[cell] < 0.5) low = middle;
            else high = middle;
        }

        double expected = StraightFront.ClockAt((cell + 0.5) * Length / cells, Reference.Permeability, Reference.Porosity);
        return ((low + high) / 2 - expected) / expected;
    }

    private static Panel Strip(double cellSize, double width) => Chain.ReferencePanel(
        Shapes.Rectangle(Length, width), cellSize, new LinePath([new(0, 0), new(0, width)]), new LinePath([new(Length, 0), new(Length, width)]));
}

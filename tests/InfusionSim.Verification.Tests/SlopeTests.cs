using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Panels;
using InfusionSim.Verification.Tests.Accuracy;
using InfusionSim.Verification.Tests.ClosedForms;
using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests;

/// <summary>Fills up and down a slope, and from pots that stand lower or higher than the panel.</summary>
public sealed class SlopeTests
{
    private const string Source = "front with weight (Washburn 1921, from memory), derived";

    private static readonly GravityHead Head = GravityHead.Of(Reference.Resin, Reference.Bag);

    [Theory]
    [InlineData(90, 5391.43)]
    [InlineData(-90, 4667.21)]
    public void FillTime_UpAndDownAWall_ConvergesWithTheIntervals(double degrees, double expected)
    {
        // Source: t = (φμ/(Kρg)) (−L − H ln(1 − L/H)), H = Δp/(ρg) = 9.27015 m. Case: L = 1 m, 100 cells, marched in 25, 50, 100 intervals up to the
        // level fill's end.
        int[] intervals = [25, 50, 100];
        double[] times = [.. intervals.Select(count => FillTime(Tilted(Strip(1, 100, degrees)), count))];
        double exact = SlopingFront.ClockAt(1, Math.Sign(degrees) / Head.Climb, Reference.Permeability, Reference.Porosity) / Reference.ClockRate;
        exact.ShouldBe(expected, 0.005, "the closed form gives the printed value");

        // Tolerance 0.5 % asked for, 0.01 % held: an error in a full clock shifts volume between two cells only.
        for (int k = 0; k < intervals.Length; k++)
            new AccuracyRecord(
                $"strip at {degrees}°, {intervals[k]} intervals, fill time", Source, expected, times[k], "s", "100 × 1 cells of 10 mm",
                InTable: k == 2).ShouldHold(1e-4);

        // Order in the intervals, against the same cells in 200, where each fills in an interval of its own: at least 1.8, because a full clock is
        // estimated from the state at the end of its interval with an error that shrinks with its square. Beyond 50 intervals nothing is left to see.
        int[] coarse = [12, 25, 50];
        double fine = FillTime(Tilted(Strip(1, 100, degrees)), 200);
        double[] errors = [.. coarse.Select(count => (FillTime(Tilted(Strip(1, 100, degrees)), count) - fine) / fine)];
        Convergence.PrintOrder($"strip at {degrees}°, intervals", [.. coarse.Select(count => 1.0 / count)], errors).ShouldBeGreaterThan(1.8);
    }

    [Fact]
    public void FillTime_UpAWallOnFinerCells_IsSecondOrder()
    {
        // Source: the sum over cells is the midpoint rule of ∫ x/(1 − x/H) dx. Case: 90°, under little vacuum so that L/H = 0.54; 10, 20, 40 cells,
        // 100 intervals.
        // Expected: order 2. Tolerance ± 0.2.
        GravityHead head = new(0.54);
        int[] counts = [10, 20, 40];
        double exact = SlopingFront.ClockAt(1, head.PerMetre, Reference.Permeability, Reference.Porosity) / Reference.ClockRate;
        double[] errors = [.. counts.Select(count => (FillTime(TiltedPanel.Of(Chain.Problem(Strip(1, count, 90)), head), 100) - exact) / exact)];

        Convergence.PrintOrder("strip at 90°, L/H = 0.54", [.. counts.Select(count => 1.0 / count)], errors).ShouldBe(2, 0.2);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void Fill_OfAWallHigherThanTheClimb_StopsWithinOneCellOfIt(int wide)
    {
        // Source: resin at rest, p = Δp − ρgz. Case: 12 m high, H = 9.27015 m, 100 mm cells, vent line along the top, never wet.
        FillMap map = FillMap.Compute(Tilted(Wall(0.1 * wide, 12, 0.1)));
        ClimbedHeights heights = ClimbedHeights.Of(map);

        heights.HighestFull.ShouldBeInRange(Head.Climb - 0.1, Head.Climb);
        heights.LowestDry.ShouldBeInRange(Head.Climb, Head.Climb + 0.1);
        FillState state = Chain.State(map, map.FillClock);
        state.ResinOut[0].ShouldBe(0);
        state.FilledFraction.ShouldBe(9.3 / 12, 1e-6);
    }

    [Theory]
    [InlineData(1.5, 1)]
    [InlineData(-2, 1)]
    [InlineData(1.5, 90)]
    public void FillTime_WithThePotBelowOrAbove_IsThatOfTheLeftOverDrive(double below, double slope)
    {
        // Source: a pot z below the fitting leaves Δp − ρgz (hydrostatics). Case: strip of 1 m, level and upright. Expected: the closed form with that drive.
        double left = 1 - below * Head.PerMetre;
        double rise = slope == 90 ? Head.PerMetre / left : 0;
        double expected = (rise == 0 ? StraightFront.ClockAt(1, Reference.Permeability, Reference.Porosity)
            : SlopingFront.ClockAt(1, rise, Reference.Permeability, Reference.Porosity)) / left / Reference.ClockRate;
        Panel strip = Strip(1, 100, slope == 90 ? 90 : 0);
        Panel fed = strip with { Feeds = [strip.Feeds[0] with { Pot = "pot" }], Pots = [new Pot("pot", -below)] };
        double time = FillTime(Tilted(fed), 48);

        // Tolerance 1e-6 level, where one solve finds it; 0.01 % marched, as above.
        new AccuracyRecord(
            $"pot {below} m below the fitting, strip at {slope}°", "hydrostatics", expected, time, "s",
            "100 × 1 cells of 10 mm").ShouldHold(slope == 90 ? 1e-4 : 1e-6);
    }

    [Fact]
    public void Fill_OfATurnedDrawingWithItsSlope_IsTheSame()
    {
        // Source: a drawing has no direction of its own. Case: 0.6 × 0.4 m, 60°, feed along part of one edge, turned by 90° with the slope.
        // Tolerance 1e-5 on the fill clock, because corrections of a full clock end at a hundredth of the interval; 1e-3 of the fill on arrivals, as
        // for any turned fill.
        FillMap map = FillMap.Compute(Tilted(Lopsided(turned: false))), turned = FillMap.Compute(Tilted(Lopsided(turned: true)));
        turned.FillClock.ShouldBe(map.FillClock, 1e-5 * map.FillClock);
        int columns = map.Problem.Operator.Columns, rows = map.Problem.Operator.Rows;
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
                turned.Arrival[column * rows + (rows - 1 - row)].ShouldBe(map.Arrival[row * columns + column], 1e-3 * map.FillClock);
        }
    }

    [Fact]
    public void Forecast_OfALevelPanel_IsUntouchedByTheWeightOfTheResin()
    {
        Panel strip = Strip(1, 20, 0) with { Slope = null };
        Forecast heavy = Chain.Predict(strip, Reference.Resin with { Density = 2000 }), light = Chain.Predict(
            strip with { Slope = new Slope(1, 0) }, Reference.Resin with { Density = 800 });

        light.FillTime.ShouldBe(heavy.FillTime);
        light.ArrivalTimes.ShouldBe(heavy.ArrivalTimes);
    }

    private static double FillTime(FillProblem problem, int intervals)
    {
        FillMap map = FillMap.Compute(problem, moments: intervals);
        Chain.State(map, map.FillClock);
        Chain.State(map, map.FillClock / 3);
        return map.FillClock / Reference.ClockRate;
    }

    private static FillProblem Tilted(Panel panel) => TiltedPanel.Of(Chain.Problem(panel), Head);

    private static Panel Strip(double length, int cells, double degrees) => Chain.ReferencePanel(
        Shapes.Rectangle(length, length / cells), length / cells, new LinePath([new(0, 0), new(0, length / cells)]), new LinePath(
            [new(length, 0), new(length, length / cells)])) with
    {
        Slope = degrees < 0 ? new Slope(Math.PI, -degrees * Math.PI / 180) : new Slope(0, degrees * Math.PI / 180),
    };

    private static Panel Wall(double width, double height, double cellSize) => Chain.ReferencePanel(
        Shapes.Rectangle(width, height), cellSize, new LinePath([new(0, 0), new(width, 0)]), new LinePath([new(0, height), new(width, height)])) with
    {
        Slope = new Slope(Math.PI / 2, Math.PI / 2),
    };

    private static Panel Lopsided(bool turned)
    {
        Point2 Place(double x, double y) => turned ? new(0.4 - y, x) : new(x, y);
        Panel panel = Chain.ReferencePanel(
            turned ? Shapes.Rectangle(0.4, 0.6) : Shapes.Rectangle(0.6, 0.4), 0.02, new LinePath([Place(0, 0), Place(0, 0.2)]), new LinePath([Place(0.6, 0.2), Place(0.6, 0.4)]));
        return panel with { Slope = new Slope(turned ? 2 + Math.PI / 2 : 2, Math.PI / 3) };
    }

    private readonly record struct ClimbedHeights(double HighestFull, double LowestDry)
    {
        public static ClimbedHeights Of(FillMap map)
        {
            double[] y = map.Problem.Cells.CentroidY;
            return new(
                Enumerable.Range(0, y.Length).Where(cell => map.Total.Fills[cell]).Max(cell => y[cell]),
                Enumerable.Range(0, y.Length).Where(cell => !map.Total.Fills[cell]).Min(cell => y[cell]));
        }
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Quality;

public class FrontSlopeTests
{
    private const double Radius = 0.075, Square = 5e-3;

    private static readonly Ring Outline = TestPanels.Rectangle(-0.4, -0.25, 0.4, 0.25);

    // The front parts round a cut-out and is fastest right beside its flanks. Its speed there from plain differences of the arrival on squares half as
    // large, over one square of this grid to either side, is the measure. Tolerance: a twentieth in the mean and a sixth at worst, for the speed changes
    // by that from one square to the next; whole squares alone are off by a fifth there.
    [Fact]
    public void Speed_BesideARoundCutOut_IsThatOfDifferencesOnSmallerSquares()
    {
        Forecast coarse = Predict(Square), fine = Predict(Square / 2);
        List<double> off = [];
        var cells = coarse.Map.Problem.Cells;
        for (int cell = 0; cell < cells.Area.Length; cell++)
        {
            Point2 at = cells.CentroidOf(cell);
            double speed = coarse.Quality!.FrontSpeeds[cell], rim = Math.Sqrt(at.X * at.X + at.Y * at.Y) - Radius;
            if (!cells.HasCloth(cell) || at.X > 0 || at.X < -Radius || rim > 3 * Square || !double.IsFinite(speed)) continue;
            if (Differences(fine, cells.Grid.ColumnOf(cell), cells.Grid.RowOf(cell)) is double known) off.Add(Math.Abs(speed / known - 1));
        }

        off.Sort();
        off.Count.ShouldBeGreaterThan(50);
        string told = $"{off.Count} squares: {off[off.Count / 2]:F3} in the middle, {off[^(off.Count / 10)]:F3} in one of ten, {off[^1]:F3} at worst";
        off.Average().ShouldBeLessThan(0.05, told);
        off[^1].ShouldBeLessThan(0.17, told);
    }

    // Null where one of the squares it takes is cut.
    private static double? Differences(Forecast fine, int column, int row)
    {
        var cells = fine.Map.Problem.Cells;
        double? x = Slope(1, 0), y = Slope(0, 1);
        return x is null || y is null ? null : fine.Clock.RateAt(0) / double.Hypot(x.Value, y.Value);

        double? Slope(int right, int up)
        {
            double after = 0, before = 0;
            foreach ((int i, int j) in ((int, int)[])[(0, 0), (1, 0), (0, 1), (1, 1)])
            {
                int one = cells.Grid.IndexOf(2 * column + i + right, 2 * row + j + up), other = cells.Grid.IndexOf(2 * column + i - right, 2 * row + j - up);
                if (Math.Min(cells.Area[one], cells.Area[other]) < 0.99 * Square * Square / 4) return null;
                (after, before) = (after + fine.Map.Arrival[one] / 4, before + fine.Map.Arrival[other] / 4);
            }

            return (after - before) / Square;
        }
    }

    private static Forecast Predict(double square)
    {
        Panel panel = new(
            new Region(Outline, [TestPanels.Disc(Radius, 72)]),
            [TestPanels.Cloth],
            [TestPanels.Feed(TestPanels.Path((-0.4, -0.25), (-0.4, 0.25)))],
            [TestPanels.Vent(TestPanels.Path((0.4, -0.25), (0.4, 0.25)))],
            [],
            square);
        return Forecaster.Predict(panel, new Resin(0.2, 360_000, 360, 1100), new Bag(1325, 101325), new Goals(), 1.5);
    }
}

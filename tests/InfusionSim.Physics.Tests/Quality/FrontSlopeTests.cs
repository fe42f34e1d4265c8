using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Tests.Flow;

namespace InfusionSim.Physics.Tests.Quality;

public class FrontSlopeTests
{
    private const double Radius = 0.04, Square = 5e-3;

    // The front parts round a cut-out and is fastest right beside its flanks. Its speed there on squares half as large, mean of the four in each square,
    // is the measure; tolerance a tenth in the mean, for the speed changes by that from one square to the next.
    [Fact]
    public void Speed_BesideARoundCutOut_IsThatOnSmallerSquares()
    {
        Forecast coarse = Predict(Square), fine = Predict(Square / 2);
        List<double> off = [];
        var cells = coarse.Map.Problem.Cells;
        for (int cell = 0; cell < cells.Area.Length; cell++)
        {
            Point2 at = cells.CentroidOf(cell);
            double speed = coarse.Quality!.FrontSpeeds[cell];
            if (!cells.HasCloth(cell) || Math.Abs(at.X) > Radius / 2 || Math.Sqrt(at.X * at.X + at.Y * at.Y) > Radius + 2 * Square || !double.IsFinite(speed)) continue;
            off.Add(Math.Abs(speed / MeanIn(fine, cells.Grid.ColumnOf(cell), cells.Grid.RowOf(cell)) - 1));
        }

        off.Count.ShouldBeGreaterThan(20);
        off.Average().ShouldBeLessThan(0.1, string.Join(' ', off.Select(static one => one.ToString("F2", null))));
    }

    private static double MeanIn(Forecast fine, int column, int row)
    {
        var grid = fine.Map.Problem.Cells.Grid;
        int[] four = [grid.IndexOf(2 * column, 2 * row), grid.IndexOf(2 * column + 1, 2 * row), grid.IndexOf(2 * column, 2 * row + 1), grid.IndexOf(2 * column + 1, 2 * row + 1)];
        double[] known = [.. four.Select(cell => fine.Quality!.FrontSpeeds[cell]).Where(double.IsFinite)];
        return known.Average();
    }

    private static Forecast Predict(double square)
    {
        Panel panel = TestPanels.Panel(
            TestPanels.Rectangle(-0.15, -0.1, 0.15, 0.1), square, [TestPanels.Cloth], [TestPanels.Feed(TestPanels.Path((-0.15, -0.1), (-0.15, 0.1)))],
            TestPanels.Vent(TestPanels.Path((0.15, -0.1), (0.15, 0.1)))) with
        {
            Region = new Region(TestPanels.Rectangle(-0.15, -0.1, 0.15, 0.1), [TestPanels.Disc(Radius, 72)]),
        };
        return Forecaster.Predict(panel, new Resin(0.2, 3600, 360, 1100), new Bag(1325, 101325), new Goals(), 1.5);
    }
}

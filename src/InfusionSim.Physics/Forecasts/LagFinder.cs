using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Compares the two sides of a panel with layers.</summary>
internal static class LagFinder
{
    // What lies within the bounds of an arrival is no lag.
    private const double Noise = 1e-3;

    // Beyond this share of the panel's diagonal no mesh worth the name is left (our own choice).
    private const double LongestStop = 0.5;

    /// <summary>Finds the lag; null for a panel of one layer.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="end">How the fill ends.</param>
    /// <param name="clock">When.</param>
    public static LagForecast? Of(FillMap map, FillEnd end, DriveClock clock)
    {
        if (map.Problem.Operator.Layers == 1) return null;
        double[] bagSide = map.BagSideArrival, toolSide = map.ToolSideArrival;
        double largest = 0;
        Point2? at = null;
        for (int cell = 0; cell < bagSide.Length; cell++)
        {
            if (!(bagSide[cell] <= end.Clock) || double.IsNaN(toolSide[cell])) continue;
            double behind = clock.TimeAt(Math.Min(toolSide[cell], end.Clock)) - clock.TimeAt(bagSide[cell]);
            if (behind <= Math.Max(largest, Noise * clock.TimeAt(end.Clock))) continue;
            largest = behind;
            at = map.Problem.Cells.CentroidOf(cell);
        }

        double? found = LengthOf(map, bagSide, toolSide, Noise * end.FillClock);
        double? expected = ExpectedUnderMesh(map.Problem.Panel);
        bool hasMesh = map.Problem.Panel?.FlowMeshes.Any(static mesh => mesh.Face == PanelFace.BagSide) == true;
        return new(largest, at, found, expected, hasMesh ? MeshToVent(map.Problem) : null)
        {
            StopBeforeVent = hasMesh && Math.Max(found ?? 0, expected ?? 0) is double stop && stop < LongestStop * Extent(map.Problem.Cells.Grid) ? stop : null,
        };
    }

    // How far the front on the bag side runs on until the mould is wet. Where the time goes with the square of the distance the slope of arrival grows by √(t₂/t₁) on the
    // way, and the lag over the mean of both slopes is exact; the slope on the mould itself is too ragged to take.
    private static double? LengthOf(FillMap map, double[] bagSide, double[] toolSide, double least)
    {
        CutCellGrid cells = map.Problem.Cells;
        List<double> lengths = [];
        for (int cell = 0; cell < bagSide.Length; cell++)
        {
            double lag = toolSide[cell] - bagSide[cell];
            if (!(lag > least) || !double.IsFinite(lag)) continue;
            double slope = Steepness(cells, bagSide, cell);
            if (slope > 0 && bagSide[cell] > 0) lengths.Add(2 * lag / (slope * (1 + Math.Sqrt(toolSide[cell] / bagSide[cell]))));
        }

        lengths.Sort();
        return lengths.Count == 0 ? null : lengths[lengths.Count / 2];
    }

    private static double Steepness(CutCellGrid cells, double[] arrival, int cell) => double.Hypot(
        Slope(cells, arrival, cells.CentroidX, cell, 1, cells.Grid.ColumnOf), Slope(cells, arrival, cells.CentroidY, cell, cells.Grid.Columns, cells.Grid.RowOf));

    private static double Slope(CutCellGrid cells, double[] arrival, double[] place, int cell, int step, Func<int, int> lineOf)
    {
        int after = cell + step < arrival.Length && lineOf(cell + step) == lineOf(cell) + 1 && IsFinite(cell + step) ? cell + step : cell;
        int before = cell >= step && lineOf(cell - step) == lineOf(cell) - 1 && IsFinite(cell - step) ? cell - step : cell;
        return after == before ? 0 : (arrival[after] - arrival[before]) / (place[after] - place[before]);

        bool IsFinite(int other) => cells.HasCloth(other) && double.IsFinite(arrival[other]);
    }

    private static double Extent(UniformGrid grid) => grid.CellSize * Math.Sqrt((double)grid.Columns * grid.Columns + (double)grid.Rows * grid.Rows);

    private static double? ExpectedUnderMesh(Panel? panel)
    {
        double[] lengths = panel is null ? [] : [.. MeshLags.Of(panel).Select(static lag => lag.Length).Where(double.IsFinite)];
        return lengths.Length == 0 ? null : lengths.Max();
    }

    private static double? MeshToVent(FillProblem problem)
    {
        IReadOnlyList<LinePath> vents = [.. problem.Panel!.Vents.Select(static vent => vent.Path)];
        int first = (problem.Operator.Layers - 1) * problem.Operator.CellsInLayer;
        double least = double.PositiveInfinity;
        for (int cell = 0; cell < problem.Operator.CellsInLayer; cell++)
        {
            if (problem.BagSide[cell] != first + cell) continue;
            foreach (LinePath vent in vents) least = Math.Min(least, Distance(vent.Points, problem.Cells.CentroidOf(cell)));
        }

        return double.IsFinite(least) ? Math.Max(0, least - problem.Cells.Grid.CellSize / 2) : null;
    }

    private static double Distance(IReadOnlyList<Point2> path, Point2 place)
    {
        double least = path[0].DistanceTo(place);
        for (int k = 1; k < path.Count; k++)
        {
            Point2 a = path[k - 1], b = path[k];
            double x = b.X - a.X, y = b.Y - a.Y, square = x * x + y * y;
            double along = square == 0 ? 0 : Math.Clamp(((place.X - a.X) * x + (place.Y - a.Y) * y) / square, 0, 1);
            least = Math.Min(least, place.DistanceTo(new(a.X + along * x, a.Y + along * y)));
        }

        return least;
    }
}

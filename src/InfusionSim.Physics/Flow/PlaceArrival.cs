using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Physics.Flow;

/// <summary>When the front passes a place between the middles of cells.</summary>
internal static class PlaceArrival
{
    // Keeps the slope across a strip one cell wide at 0 where no neighbour tells it.
    private const double Stiffness = 1e-9;

    // A cell is whole when no more than this share of it is missing: what cutting it out of an outline may lose to rounding.
    private const double Whole = 1e-6;

    /// <summary>Drive clock at which the front passes a place [-]; +∞ where it never does, NaN where there is no cloth.</summary>
    /// <remarks>
    /// Amid four whole cells the value is linear along each side of the square between their middles; beside an edge, a cut-out or a line
    /// it lies on the plane that fits the cell and those it is open to best (least squares).
    /// </remarks>
    /// <param name="map">The fill.</param>
    /// <param name="side">Node of each cell on the side asked for [-]. [rows × columns], x fastest.</param>
    /// <param name="arrival">Arrival in each cell on that side [-]. [rows × columns], x fastest.</param>
    /// <param name="place">The place [m].</param>
    public static double At(FillMap map, int[] side, double[] arrival, Point2 place)
    {
        CutCellGrid cells = map.Problem.Cells;
        int owner = new CellFinder(cells).OwnerAt(place);
        if (owner < 0 || side[owner] < 0) return double.NaN;
        if (!double.IsFinite(arrival[owner])) return arrival[owner];
        return AmidFour(map, side, arrival, place) ?? OnPlane(map, side, arrival, owner, place);
    }

    private static double? AmidFour(FillMap map, int[] side, double[] arrival, Point2 place)
    {
        UniformGrid grid = map.Problem.Cells.Grid;
        double x = (place.X - grid.Origin.X) / grid.CellSize - 0.5, y = (place.Y - grid.Origin.Y) / grid.CellSize - 0.5;
        int column = (int)Math.Floor(x), row = (int)Math.Floor(y);
        if (column < 0 || row < 0 || column + 1 >= grid.Columns || row + 1 >= grid.Rows) return null;
        int cell = grid.IndexOf(column, row), above = cell + grid.Columns;
        double[] east = map.Problem.Operator.East, north = map.Problem.Operator.North, area = map.Problem.Cells.Area;
        int shift = side[cell] - cell;
        if (side[cell] < 0 || side[cell + 1] - 1 != side[cell] || side[above] - above != shift || side[above + 1] - 1 != side[above]) return null;
        bool open = east[cell + shift] > 0 && east[above + shift] > 0 && north[cell + shift] > 0 && north[cell + 1 + shift] > 0;
        if (!open || !IsWhole(cell) || !IsWhole(cell + 1) || !IsWhole(above) || !IsWhole(above + 1)) return null;
        double right = x - column, up = y - row;
        return (1 - up) * ((1 - right) * arrival[cell] + right * arrival[cell + 1])
            + up * ((1 - right) * arrival[above] + right * arrival[above + 1]);

        bool IsWhole(int one) =>
            double.IsFinite(arrival[one]) && Math.Abs(area[one] - grid.CellSize * grid.CellSize) < Whole * grid.CellSize * grid.CellSize;
    }

    private static double OnPlane(FillMap map, int[] side, double[] arrival, int owner, Point2 place)
    {
        CutCellGrid cells = map.Problem.Cells;
        double size = cells.Grid.CellSize, xx = Stiffness, yy = Stiffness, xy = 0, xt = 0, yt = 0;
        int columns = cells.Grid.Columns;
        double[] east = map.Problem.Operator.East, north = map.Problem.Operator.North;
        int node = side[owner];
        if (east[node] > 0) Add(owner + 1);
        if (owner % columns > 0 && east[node - 1] > 0) Add(owner - 1);
        if (north[node] > 0) Add(owner + columns);
        if (owner >= columns && north[node - columns] > 0) Add(owner - columns);
        double determinant = xx * yy - xy * xy;
        double slopeX = (yy * xt - xy * yt) / determinant, slopeY = (xx * yt - xy * xt) / determinant;
        return Math.Max(0, arrival[owner]
            + slopeX * (place.X - cells.CentroidX[owner]) / size + slopeY * (place.Y - cells.CentroidY[owner]) / size);

        void Add(int neighbour)
        {
            double later = arrival[neighbour] - arrival[owner];
            if (!double.IsFinite(later)) return;
            double x = (cells.CentroidX[neighbour] - cells.CentroidX[owner]) / size, y = (cells.CentroidY[neighbour] - cells.CentroidY[owner]) / size;
            xx += x * x;
            yy += y * y;
            xy += x * y;
            xt += x * later;
            yt += y * later;
        }
    }
}

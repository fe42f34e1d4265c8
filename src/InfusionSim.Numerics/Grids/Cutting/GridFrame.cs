using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>Turns places of the panel into squares of a grid and back.</summary>
/// <param name="grid">The grid.</param>
internal sealed class GridFrame(UniformGrid grid)
{
    private readonly double onLine = OnLine(grid.Origin, grid.CellSize, Math.Max(grid.Columns, grid.Rows));

    /// <summary>Distance from a grid line below which a place counts as on it [squares]: a few roundings of the coordinates, and at least 1e-12.</summary>
    /// <param name="origin">Lower left corner of the grid [m].</param>
    /// <param name="cellSize">Side of a square [m].</param>
    /// <param name="extent">Squares along the longer side [-].</param>
    public static double OnLine(Point2 origin, double cellSize, double extent)
    {
        double farthest = extent + Math.Max(Math.Abs(origin.X), Math.Abs(origin.Y)) / cellSize;
        return Math.Max(1e-12, 32 * (Math.BitIncrement(1.0) - 1) * farthest);
    }

    /// <summary>The nearest whole number when the value is on a line, else the value itself.</summary>
    /// <param name="value">Position [squares].</param>
    public double Snap(double value)
    {
        double whole = Math.Round(value);
        return Math.Abs(value - whole) <= onLine ? whole : value;
    }

    /// <summary>A place in squares from the grid's origin.</summary>
    /// <param name="place">The place [m]; on the grid.</param>
    public GridPoint ToGridPoint(Point2 place) => new(
        Math.Clamp(Snap((place.X - grid.Origin.X) / grid.CellSize), 0, grid.Columns),
        Math.Clamp(Snap((place.Y - grid.Origin.Y) / grid.CellSize), 0, grid.Rows));

    /// <summary>A place on the panel [m].</summary>
    /// <param name="point">The place in squares.</param>
    public Point2 ToPlace(GridPoint point) => new(grid.Origin.X + point.U * grid.CellSize, grid.Origin.Y + point.V * grid.CellSize);
}

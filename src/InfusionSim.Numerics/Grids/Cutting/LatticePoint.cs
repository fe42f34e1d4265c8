using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>A place measured in squares from the grid's origin: grid lines are the whole numbers.</summary>
/// <param name="U">Squares to the right of the origin [-].</param>
/// <param name="V">Squares above the origin [-].</param>
internal readonly record struct LatticePoint(double U, double V)
{
    /// <summary>Distance from a grid line below which a place counts as on it [-]; far above rounding, far below anything a drawing means.</summary>
    public const double OnLine = 1e-9;

    /// <summary>The nearest whole number when it is closer than <see cref="OnLine"/>, else the value itself.</summary>
    /// <param name="value">Position in squares [-].</param>
    public static double Snap(double value)
    {
        double whole = Math.Round(value);
        return Math.Abs(value - whole) <= OnLine ? whole : value;
    }

    /// <summary>Turns a place of the panel into squares of a grid.</summary>
    /// <param name="place">The place [m]; on the grid.</param>
    /// <param name="grid">The grid.</param>
    public static LatticePoint From(Point2 place, UniformGrid grid) => new(
        Math.Clamp(Snap((place.X - grid.Origin.X) / grid.CellSize), 0, grid.Columns),
        Math.Clamp(Snap((place.Y - grid.Origin.Y) / grid.CellSize), 0, grid.Rows));

    /// <summary>The place on the panel [m].</summary>
    /// <param name="grid">The grid.</param>
    public Point2 ToPlace(UniformGrid grid) => new(grid.Origin.X + U * grid.CellSize, grid.Origin.Y + V * grid.CellSize);
}

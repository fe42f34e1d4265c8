using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>A rectangle of squares, both ends included; it may reach beyond the grid.</summary>
/// <param name="LowColumn">First column [-].</param>
/// <param name="LowRow">First row [-].</param>
/// <param name="HighColumn">Last column [-].</param>
/// <param name="HighRow">Last row [-].</param>
internal readonly record struct SquareWindow(int LowColumn, int LowRow, int HighColumn, int HighRow)
{
    /// <summary>Every square of any grid.</summary>
    public static SquareWindow All { get; } = new(int.MinValue, int.MinValue, int.MaxValue, int.MaxValue);

    /// <summary>The squares a ring can touch, and one more at each side for what rounding may add.</summary>
    /// <param name="ring">The ring.</param>
    /// <param name="grid">The squares.</param>
    public static SquareWindow Round(Ring ring, UniformGrid grid)
    {
        return new(
            At(ring.Corners.Min(c => c.X) - grid.Origin.X) - 1,
            At(ring.Corners.Min(c => c.Y) - grid.Origin.Y) - 1,
            At(ring.Corners.Max(c => c.X) - grid.Origin.X) + 1,
            At(ring.Corners.Max(c => c.Y) - grid.Origin.Y) + 1);

        int At(double distance) => (int)Math.Clamp(Math.Floor(distance / grid.CellSize), -2, Math.Max(grid.Columns, grid.Rows) + 2);
    }

    /// <summary>Whether a square is one of them.</summary>
    /// <param name="column">Its column [-].</param>
    /// <param name="row">Its row [-].</param>
    public bool Contains(int column, int row) => column >= LowColumn && column <= HighColumn && row >= LowRow && row <= HighRow;

    /// <summary>Whether another rectangle shares a square with this one.</summary>
    /// <param name="other">The other.</param>
    public bool Meets(SquareWindow other) =>
        LowColumn <= other.HighColumn && other.LowColumn <= HighColumn && LowRow <= other.HighRow && other.LowRow <= HighRow;
}

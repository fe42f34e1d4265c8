using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Protocol.Plans;

/// <summary>The rectangle round an outline.</summary>
/// <param name="Width">Width [m].</param>
/// <param name="Height">Height [m].</param>
internal readonly record struct PanelBox(double Width, double Height)
{
    /// <summary>The rectangle round a ring.</summary>
    public static PanelBox Of(Ring ring) => new(
        ring.Corners.Max(corner => corner.X) - ring.Corners.Min(corner => corner.X),
        ring.Corners.Max(corner => corner.Y) - ring.Corners.Min(corner => corner.Y));

    /// <summary>Squares of a size in the rectangle [-], as a number that cannot overflow.</summary>
    public double SquaresOf(double cellSize) => Across(Width, cellSize) * Across(Height, cellSize);

    // The same slack as the grid has: a side of 1000 squares and a rounding error has 1000 squares.
    private static double Across(double length, double cellSize) => Math.Max(1, Math.Ceiling(length / cellSize - 1e-9));
}

namespace InfusionSim.Numerics.Geometry;

/// <summary>An area of the plane: an outline less its cut-outs.</summary>
/// <param name="Outline">The outer edge.</param>
/// <param name="Cutouts">Holes inside the outline, apart from each other; may be empty.</param>
public sealed record Region(Ring Outline, IReadOnlyList<Ring> Cutouts)
{
    /// <summary>Whether the outline reaches farther along x than along y; of equals, whether its corners lie farther along x on the whole.</summary>
    /// <remarks>What could go either way is decided by it, so that it goes the same way when x and y are exchanged.</remarks>
    public bool IsWide
    {
        get
        {
            IReadOnlyList<Point2> corners = Outline.Corners;
            double left = corners.Min(static corner => corner.X), bottom = corners.Min(static corner => corner.Y);
            double width = corners.Max(static corner => corner.X) - left, height = corners.Max(static corner => corner.Y) - bottom;
            return width != height ? width > height : corners.Sum(corner => corner.X - left) >= corners.Sum(corner => corner.Y - bottom);
        }
    }
}

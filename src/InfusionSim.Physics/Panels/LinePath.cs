using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Panels;

/// <summary>Where a feed line or vent line lies; one point alone is a fitting.</summary>
/// <param name="Points">Corners of the line in order [m], at least one.</param>
public sealed record LinePath(IReadOnlyList<Point2> Points)
{
    /// <summary>Whether it is a fitting rather than a line.</summary>
    public bool IsFitting => Points.Count == 1;
}

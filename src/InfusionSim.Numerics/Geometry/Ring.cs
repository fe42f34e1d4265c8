namespace InfusionSim.Numerics.Geometry;

/// <summary>A closed polygon that closes itself from its last corner to its first; either way round.</summary>
/// <param name="Corners">Corners in order [m], at least three, the first not repeated at the end.</param>
public sealed record Ring(IReadOnlyList<Point2> Corners)
{
    /// <summary>Area by the shoelace rule [m²]; positive when the corners run anticlockwise.</summary>
    public double SignedArea
    {
        get
        {
            double twice = 0;
            for (int k = 0; k < Corners.Count; k++)
            {
                Point2 a = Corners[k], b = Corners[(k + 1) % Corners.Count];
                twice += a.X * b.Y - b.X * a.Y;
            }

            return twice / 2;
        }
    }
}

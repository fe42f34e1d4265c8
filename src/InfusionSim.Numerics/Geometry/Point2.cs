namespace InfusionSim.Numerics.Geometry;

/// <summary>A place in the plane of the panel [m].</summary>
/// <param name="X">Distance to the right of the origin [m]; any finite number.</param>
/// <param name="Y">Distance above the origin [m]; any finite number.</param>
public readonly record struct Point2(double X, double Y)
{
    /// <summary>Straight distance to another place [m].</summary>
    /// <param name="other">The other place [m].</param>
    public double DistanceTo(Point2 other) => Math.Sqrt((X - other.X) * (X - other.X) + (Y - other.Y) * (Y - other.Y));
}

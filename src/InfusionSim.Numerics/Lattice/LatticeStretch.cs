namespace InfusionSim.Numerics.Lattice;

/// <summary>Stretch of the plane that keeps areas and makes a lattice conduct alike in all directions.</summary>
/// <remarks>x′ = x (Ty/Tx)^¼, y′ = y (Tx/Ty)^¼ (textbook).</remarks>
/// <param name="AlongX">Factor on lengths along x [-].</param>
/// <param name="AlongY">Factor on lengths along y [-]; 1/<paramref name="AlongX"/>.</param>
public readonly record struct LatticeStretch(double AlongX, double AlongY)
{
    /// <summary>Stretch of a lattice.</summary>
    /// <param name="ratio">Conductance along y over that along x [-], above 0.</param>
    public static LatticeStretch Of(double ratio)
    {
        double fourthRoot = Math.Sqrt(Math.Sqrt(ratio));
        return new(fourthRoot, 1 / fourthRoot);
    }

    /// <summary>Radius of the circle that acts in the stretched plane like a circle of the unstretched one [same unit as the radius].</summary>
    /// <remarks>The circle becomes an ellipse, whose logarithmic capacity is half the sum of its semi-axes (textbook: conformal map of its outside).</remarks>
    /// <param name="radius">Radius before the stretch [any unit of length].</param>
    public double EffectiveRadius(double radius) => radius * (AlongX + AlongY) / 2;
}

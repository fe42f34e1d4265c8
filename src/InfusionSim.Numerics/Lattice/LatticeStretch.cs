namespace InfusionSim.Numerics.Lattice;

/// <summary>Stretch of the plane that keeps areas and makes a lattice conduct alike in all directions: x′ = (K/√det K)^(−½) x.</summary>
/// <remarks>Along the principal axes by (K2/K1)^¼ and (K1/K2)^¼ (textbook).</remarks>
/// <param name="AlongX">Factor from x to x′ [-].</param>
/// <param name="AlongY">Factor from y to y′ [-].</param>
/// <param name="Cross">Factor from x to y′ and from y to x′ [-]; 0 where the axes lie along x and y.</param>
public readonly record struct LatticeStretch(double AlongX, double AlongY, double Cross = 0)
{
    /// <summary>Stretch of a lattice whose axes lie along x and y.</summary>
    /// <param name="ratio">Conductance along y over that along x [-], above 0.</param>
    public static LatticeStretch Of(double ratio)
    {
        double fourthRoot = Math.Sqrt(Math.Sqrt(ratio));
        return new(fourthRoot, 1 / fourthRoot);
    }

    /// <summary>Stretch of a lattice that conducts like a tensor.</summary>
    /// <remarks>A matrix of determinant 1 has the root (A + 1)/√(tr A + 2) (Cayley and Hamilton, textbook).</remarks>
    /// <param name="tensor">The tensor; principal values above 0.</param>
    public static LatticeStretch Of(PlaneTensor tensor)
    {
        if (tensor.Xy == 0) return Of(tensor.Yy / tensor.Xx);
        PlaneTensor a = tensor.Normalized();
        double root = Math.Sqrt(a.Trace + 2);
        return new((a.Yy + 1) / root, (a.Xx + 1) / root, -a.Xy / root);
    }

    /// <summary>Distance from the origin in the stretched plane [same unit as the coordinates].</summary>
    /// <param name="x">Place along x before the stretch [any unit of length].</param>
    /// <param name="y">Place along y before the stretch [the same unit].</param>
    public double DistanceTo(double x, double y)
    {
        double along = AlongX * x + Cross * y, across = Cross * x + AlongY * y;
        return Math.Sqrt(along * along + across * across);
    }

    /// <summary>Radius of the circle that acts in the stretched plane like a circle of the unstretched one [same unit as the radius].</summary>
    /// <remarks>The circle becomes an ellipse, whose logarithmic capacity is half the sum of its semi-axes (textbook: conformal map of its outside).</remarks>
    /// <param name="radius">Radius before the stretch [any unit of length].</param>
    public double EffectiveRadius(double radius) => radius * (AlongX + AlongY) / 2;
}

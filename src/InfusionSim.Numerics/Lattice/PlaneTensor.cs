namespace InfusionSim.Numerics.Lattice;

/// <summary>A symmetric 2 × 2 tensor.</summary>
/// <param name="Xx">What a fall along x drives along x [any unit].</param>
/// <param name="Yy">What a fall along y drives along y [the same unit].</param>
/// <param name="Xy">What a fall along one drives along the other [the same unit].</param>
public readonly record struct PlaneTensor(double Xx, double Yy, double Xy)
{
    /// <summary>Sum of the diagonal [unit of the tensor].</summary>
    public double Trace => Xx + Yy;

    /// <summary>Product of the two principal values [unit of the tensor, squared].</summary>
    public double Determinant => Xx * Yy - Xy * Xy;

    /// <summary>The tensor divided by the root of its determinant; principal values above 0 only.</summary>
    public PlaneTensor Normalized()
    {
        double root = Math.Sqrt(Determinant);
        return new(Xx / root, Yy / root, Xy / root);
    }

    /// <summary>Value along a direction times the square of its length, v·K·v [unit of the tensor times that of the vector, squared].</summary>
    /// <param name="x">Component along x [any unit].</param>
    /// <param name="y">Component along y [the same unit].</param>
    public double Along(double x, double y) => Xx * x * x + Yy * y * y + 2 * Xy * x * y;

    /// <summary>Principal values, the larger first [unit of the tensor], and how far its axis is turned anticlockwise from x [rad], above −π/2 up to π/2; 0 where the two are equal but for rounding.</summary>
    public (double First, double Second, double Angle) Principal()
    {
        const double Rounding = 1e-13;
        double mean = Trace / 2, half = (Xx - Yy) / 2, spread = Math.Sqrt(half * half + Xy * Xy);
        if (spread <= Rounding * mean) return (mean, mean, 0);
        if (Math.Abs(Xy) <= Rounding * mean) return half > 0 ? (Xx, Yy, 0) : (Yy, Xx, Math.PI / 2);
        return (mean + spread, Determinant / (mean + spread), Math.Atan2(Xy, half) / 2);
    }

    /// <summary>Tensor with its axes along x and y.</summary>
    /// <param name="ratio">Value along y over that along x [-], above 0; their product is 1.</param>
    public static PlaneTensor Aligned(double ratio)
    {
        double root = Math.Sqrt(ratio);
        return new(1 / root, root, 0);
    }

    /// <summary>Tensor from its principal values.</summary>
    /// <remarks>Kxx = K1 cos²β + K2 sin²β, Kyy = K1 sin²β + K2 cos²β, Kxy = (K1 − K2) sin β cos β (textbook).</remarks>
    /// <param name="first">Value along the angle [any unit].</param>
    /// <param name="second">Value across it [the same unit].</param>
    /// <param name="angle">How far the first axis is turned anticlockwise from x [rad].</param>
    public static PlaneTensor Of(double first, double second, double angle)
    {
        double sine = Math.Sin(angle), cosine = Math.Cos(angle);
        return new(first * cosine * cosine + second * sine * sine, first * sine * sine + second * cosine * cosine, (first - second) * sine * cosine);
    }
}

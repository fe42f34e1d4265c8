namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>Largest value of the function with ∇²w = −1 inside and w = 0 on the edge, for shapes with a closed form [m²].</summary>
/// <remarks>
/// A part fed round its whole edge is full at the clock φ/K · max w. Source: Timoshenko and Goodier, Theory of
/// Elasticity, chapter on torsion, whose stress function is 2w; from memory.
/// </remarks>
public static class TorsionFunctions
{
    /// <summary>Rectangle: a²[1/8 − (4/π³) Σ over odd n of (−1)^((n−1)/2) / (n³ cosh(nπb/2a))].</summary>
    /// <param name="a">One side [m].</param>
    /// <param name="b">Other side [m].</param>
    public static double Rectangle(double a, double b)
    {
        double sum = 0;
        for (int n = 1; n < 60; n += 2)
        {
            double sign = (n - 1) / 2 % 2 == 0 ? 1 : -1;
            sum += sign / (Math.Pow(n, 3) * Math.Cosh(n * Math.PI * b / (2 * a)));
        }

        return a * a * (0.125 - 4 / Math.Pow(Math.PI, 3) * sum);
    }

    /// <summary>Ellipse: a²b²/(2(a² + b²)).</summary>
    /// <param name="a">One semi-axis [m].</param>
    /// <param name="b">Other semi-axis [m].</param>
    public static double Ellipse(double a, double b) => a * a * b * b / (2 * (a * a + b * b));

    /// <summary>Equilateral triangle: H²/27 with the height H.</summary>
    /// <param name="side">Side [m].</param>
    public static double EquilateralTriangle(double side) => 0.75 * side * side / 27;
}

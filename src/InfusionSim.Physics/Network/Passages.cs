namespace InfusionSim.Physics.Network;

/// <summary>
/// Permeability that open passages come to: slots, round tubes, rectangular ducts, read as the mean velocity of laminar flow over the fall of
/// pressure, times viscosity.
/// </summary>
/// <remarks>
/// All hold for slow, fully developed flow of a Newtonian liquid in a straight passage with smooth walls; solved in White, Viscous Fluid Flow (from
/// memory).
/// </remarks>
public static class Passages
{
    // Terms fall as the fifth power of their number: the rest of the series is below 1e-12 of its sum.
    private const int Terms = 100;

    /// <summary>Permeability of a slot between two wide walls [m²].</summary>
    /// <remarks>K = g²/12 (plane Poiseuille flow).</remarks>
    /// <param name="gap">Distance of the walls [m], above 0.</param>
    public static double Slot(double gap)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(gap);
        return gap * gap / 12;
    }

    /// <summary>Permeability of a round tube [m²].</summary>
    /// <remarks>K = r²/8 (Hagen and Poiseuille).</remarks>
    /// <param name="radius">Inner radius [m], above 0.</param>
    public static double Round(double radius)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radius);
        return radius * radius / 8;
    }

    /// <summary>Permeability of a round tube times its cross-section [m⁴].</summary>
    /// <remarks>π r⁴/8: divided by the length of the tube it is the conductance between its ends.</remarks>
    /// <param name="radius">Inner radius [m], above 0.</param>
    public static double RoundConductance(double radius) => Round(radius) * Math.PI * radius * radius;

    /// <summary>Permeability of a rectangular duct [m²].</summary>
    /// <remarks>
    /// K = (a²/12) [1 − (192/π⁵) (a/b) Σ tanh(nπb/2a)/n⁵] over odd n, with a the shorter side: the exact series. A slot of the same
    /// width is 1.7 times too open for 2 mm in cloth of 3 mm.
    /// </remarks>
    /// <param name="width">One side [m], above 0.</param>
    /// <param name="height">The other side [m], above 0.</param>
    public static double Duct(double width, double height)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(height);
        double a = Math.Min(width, height), b = Math.Max(width, height), sum = 0;
        for (int n = 2 * Terms - 1; n > 0; n -= 2) sum += Math.Tanh(n * Math.PI * b / (2 * a)) / Math.Pow(n, 5);
        return Slot(a) * (1 - 192 / Math.Pow(Math.PI, 5) * (a / b) * sum);
    }

    /// <summary>Permeability of a rectangular duct in short [m²].</summary>
    /// <remarks>
    /// K ≈ (a²/12) (1 − 0.63 a/b): within 0.2 % of the series for sides at least 2 to 1 (from memory; the limit is checked against the series).
    /// </remarks>
    /// <param name="width">One side [m], above 0.</param>
    /// <param name="height">The other side [m], above 0; the longer at least twice the shorter.</param>
    public static double DuctInShort(double width, double height)
    {
        double a = Math.Min(width, height), b = Math.Max(width, height);
        if (b < 2 * a) throw new ArgumentOutOfRangeException(nameof(height), b / a, "The short form holds from 2 to 1; take the series.");
        return Slot(a) * (1 - 0.63 * a / b);
    }

    /// <summary>Permeability times thickness that grooves side by side add, per width of the core they are cut into [m³].</summary>
    /// <remarks>T = K a b / P for grooves of a × b at a pitch P (derived: the grooves lie side by side, the web between them passes nothing).</remarks>
    /// <param name="width">Width of a groove [m], above 0.</param>
    /// <param name="depth">Depth of a groove [m], above 0.</param>
    /// <param name="pitch">Distance from groove to groove [m], at least the width.</param>
    public static double Grooves(double width, double depth, double pitch)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pitch, width);
        return Duct(width, depth) * width * depth / pitch;
    }
}

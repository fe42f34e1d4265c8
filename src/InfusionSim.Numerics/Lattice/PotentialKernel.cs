using MathNet.Numerics.Integration;

namespace InfusionSim.Numerics.Lattice;

/// <summary>Potential of a unit sink at one cell of an endless lattice with one conductance along the rows and one along the columns: the Green function of the five-point operator.</summary>
/// <remarks>
/// a(m, n) = (2π)⁻² ∬ (1 − cos(m l + n k)) / (2 Tx (1 − cos l) + 2 Ty (1 − cos k)) dl dk, so that a(0, 0) = 0 and the operator
/// takes a to −1 at the origin and to 0 elsewhere. The integral over l is known in closed form, which leaves a smooth function on
/// (0, π): a = (1/π) ∫ (1 − e^{−|m| s} cos n k) / (2 Tx sinh s) dk with sinh(s/2) = √(Ty/Tx) sin(k/2) (derived by residues). Values
/// are for √(Tx·Ty) = 1; divide by √(Tx·Ty) for others. Far away a → (ln r + c)/2π, r the distance in the stretched plane
/// and c = γ + ln 4 − ½ ln(√(Ty/Tx) + √(Tx/Ty)), γ Euler's constant: the constant behind the equivalent radius of
/// Peaceman, SPE J. 23 (1983) 531 (from memory; checked against the integral).
/// </remarks>
public sealed class PotentialKernel
{
    private const int NodesPerPanel = 32;
    private static readonly GaussLegendreRule Rule = new(0, 1, NodesPerPanel);

    private readonly bool swapped;
    private readonly double flatRatio;
    private readonly Dictionary<LatticeCell, double> known = [];

    /// <summary>Makes the kernel of one lattice.</summary>
    /// <param name="ratio">Conductance along the columns over that along the rows, Ty/Tx [-], above 0.</param>
    public PotentialKernel(double ratio)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratio);
        Ratio = ratio;
        Stretch = LatticeStretch.Of(ratio);
        // Below 1 the integrand has no singularity near the path, so few nodes do.
        swapped = ratio > 1;
        flatRatio = swapped ? 1 / ratio : ratio;
        double root = Math.Sqrt(ratio);
        FarFieldConstant = MathNet.Numerics.Constants.EulerMascheroni + Math.Log(4) - Math.Log(root + 1 / root) / 2;
    }

    /// <summary>Conductance along the columns over that along the rows [-].</summary>
    public double Ratio { get; }

    /// <summary>Plane in which the lattice conducts alike in all directions.</summary>
    public LatticeStretch Stretch { get; }

    /// <summary>The c of the far field (ln r + c)/2π [-], r in cells in the stretched plane.</summary>
    public double FarFieldConstant { get; }

    /// <summary>Value at a cell, times √(Tx·Ty) [-]; 0 at the reference cell and growing away from it.</summary>
    /// <param name="cell">The cell, counted from the sink.</param>
    public double At(LatticeCell cell)
    {
        int column = Math.Abs(cell.Column), row = Math.Abs(cell.Row);
        LatticeCell key = swapped ? new(row, column) : new(column, row);
        if (!known.TryGetValue(key, out double value)) known[key] = value = Integrate(key.Column, key.Row);
        return value;
    }

    private double Integrate(int along, int across)
    {
        if (along == 0 && across == 0) return 0;
        int panels = 4 + (along + across) / 8;
        double width = Math.PI / panels, slope = Math.Sqrt(flatRatio), sum = 0;
        for (int panel = 0; panel < panels; panel++)
        {
            for (int node = 0; node < NodesPerPanel; node++)
            {
                double k = (panel + Rule.GetAbscissa(node)) * width;
                sum += Rule.GetWeight(node) * Integrand(k, along, across, slope);
            }
        }

        // Tx = Ratio^(−½) where √(Tx·Ty) = 1.
        return sum * width / Math.PI * slope / 2;
    }

    private static double Integrand(double k, int along, int across, double slope)
    {
        double sinhHalf = slope * Math.Sin(k / 2);
        double s = 2 * Math.Asinh(sinhHalf);
        double sinh = 2 * sinhHalf * Math.Sqrt(1 + sinhHalf * sinhHalf);
        // 1 − e^{−ms} cos nk without cancellation where k is small.
        double half = along * s / 2, sine = Math.Sin(across * k / 2);
        double numerator = 2 * Math.Exp(-half) * Math.Sinh(half) + 2 * Math.Exp(-2 * half) * sine * sine;
        return numerator / sinh;
    }
}

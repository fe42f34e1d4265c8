using MathNet.Numerics.Integration;

namespace InfusionSim.Numerics.Lattice;

/// <summary>Potential of a unit sink at one cell of an endless lattice that conducts along three directions: the Green function of any stencil of <see cref="SellingStencil"/>.</summary>
/// <remarks>
/// a(x) = (2π)⁻² ∬ (1 − cos k·x) / Σ 2w (1 − cos k·e) dk over the square of side 2π, so that a(0) = 0 and the operator takes a to −1 at
/// the origin and to 0 elsewhere. With x = m e₁ + n e₂ and e₃ = e₁ + e₂ the integral over the second wave number is known in closed form, which leaves
/// a = (1/π) ∫ (1 − e^{−|n| s} cos(m k − n ψ)) / (4 σ √(w₁² σ² + P)) dk over (0, π), σ = sin(k/2), P = w₁w₂ + w₂w₃ + w₃w₁ = det K,
/// R e^{iψ} = 2 (w₂ + w₃ e^{ik}), sinh²(s/2) = (w₁ + 2 w₂w₃ /(w₂ + w₃ + R/2)) 2σ² / R (derived by residues). Values are for det K = 1; divide by
/// √det K for others. Far away a → (ln r + c)/2π, r the distance in the stretched plane and
/// c = γ + ln 4 − ½ ln((w₁ + w₂)(w₂ + w₃)(w₃ + w₁)), γ Euler's constant (derived along e₁; with w₃ = 0 the constant behind the equivalent radius of
/// Peaceman, SPE J. 23 (1983) 531, from memory).
/// </remarks>
public sealed class PotentialKernel
{
    private const int NodesPerPanel = 32;
    private static readonly GaussLegendreRule Rule = new(0, 1, NodesPerPanel);

    private readonly LatticeArm first, second;
    private readonly double alone, direct, joint;
    private readonly Dictionary<LatticeCell, double> known = [];

    /// <summary>Makes the kernel of a lattice with one conductance along the rows and one along the columns.</summary>
    /// <param name="ratio">Conductance along the columns over that along the rows, Ty/Tx [-], above 0.</param>
    public PotentialKernel(double ratio)
        : this(Aligned(ratio))
    {
    }

    /// <summary>Makes the kernel of a lattice that conducts like a tensor.</summary>
    /// <param name="tensor">The tensor; principal values above 0. Only its shape counts, not its size.</param>
    public PotentialKernel(PlaneTensor tensor)
    {
        Stencil = SellingStencil.Of(tensor.Normalized());
        Stretch = LatticeStretch.Of(tensor);
        // With the smallest weight kept out of the closed form the integrand has no singularity near the path, so few nodes do.
        LatticeArm[] arms = [.. Stencil.Superbase.OrderBy(arm => arm.Weight)];
        (LatticeArm a, LatticeArm b, LatticeArm c) = (arms[0], arms[1], arms[2]);
        bool isSum = a.Right + b.Right == c.Right && a.Up + b.Up == c.Up;
        bool isOpposite = a.Right + b.Right == -c.Right && a.Up + b.Up == -c.Up;
        first = a;
        second = isSum || isOpposite ? b : new(-b.Right, -b.Up, b.Weight);
        (alone, direct, joint) = (a.Weight, b.Weight, c.Weight);
        FarFieldConstant = MathNet.Numerics.Constants.EulerMascheroni + Math.Log(4) - Math.Log((alone + direct) * (direct + joint) * (joint + alone)) / 2;
    }

    /// <summary>Ways of the lattice, for det K = 1.</summary>
    public SellingStencil Stencil { get; }

    /// <summary>Plane in which the lattice conducts alike in all directions.</summary>
    public LatticeStretch Stretch { get; }

    /// <summary>The c of the far field (ln r + c)/2π [-], r in cells in the stretched plane.</summary>
    public double FarFieldConstant { get; }

    /// <summary>Value at a cell, times √det K [-]; 0 at the reference cell and growing away from it.</summary>
    /// <param name="cell">The cell, counted from the sink.</param>
    public double At(LatticeCell cell)
    {
        int turn = first.Right * second.Up - first.Up * second.Right;
        int along = turn * (cell.Column * second.Up - cell.Row * second.Right), across = turn * (first.Right * cell.Row - first.Up * cell.Column);
        if (across < 0 || (across == 0 && along < 0)) (along, across) = (-along, -across);
        LatticeCell key = new(along, across);
        if (!known.TryGetValue(key, out double value)) known[key] = value = Integrate(along, across);
        return value;
    }

    private double Integrate(int along, int across)
    {
        if (along == 0 && across == 0) return 0;
        int panels = 4 + (Math.Abs(along) + across) / 8;
        double width = Math.PI / panels, sum = 0;
        for (int panel = 0; panel < panels; panel++)
        {
            for (int node = 0; node < NodesPerPanel; node++)
            {
                double k = (panel + Rule.GetAbscissa(node)) * width;
                sum += Rule.GetWeight(node) * Integrand(k, along, across);
            }
        }

        return sum * width / Math.PI;
    }

    private double Integrand(double k, int along, int across)
    {
        double sine = Math.Sin(k / 2), real = direct + joint * Math.Cos(k), imaginary = joint * Math.Sin(k), size = Math.Sqrt(real * real + imaginary * imaginary);
        double decay = 0;
        if (across > 0)
        {
            double sinhHalf = sine * Math.Sqrt((alone + 2 * direct * joint / (direct + joint + size)) / size);
            decay = 2 * across * Math.Asinh(sinhHalf);
        }

        // 1 − e^{−ns} cos(mk − nψ) without cancellation where k is small.
        double turned = Math.Sin((along * k - across * Math.Atan2(imaginary, real)) / 2);
        double lost = decay < 1 ? 2 * Math.Exp(-decay / 2) * Math.Sinh(decay / 2) : 1 - Math.Exp(-decay);
        double numerator = lost + 2 * Math.Exp(-decay) * turned * turned;
        return numerator / (4 * sine * Math.Sqrt(alone * alone * sine * sine + 1));
    }

    private static PlaneTensor Aligned(double ratio)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(ratio);
        return PlaneTensor.Aligned(ratio);
    }
}

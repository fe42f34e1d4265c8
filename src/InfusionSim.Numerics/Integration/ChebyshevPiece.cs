namespace InfusionSim.Numerics.Integration;

/// <summary>A smooth function on a short interval as a Chebyshev series, with the series of its integral from the left end.</summary>
/// <remarks>
/// Interpolation at the Chebyshev points of the first kind; the integral follows term by term. Source: Mason and Handscomb, Chebyshev Polynomials,
/// Chapman &amp; Hall 2003 (from memory).
/// </remarks>
internal sealed class ChebyshevPiece
{
    private const int Terms = 20;

    private const int Tail = 3;

    private static readonly double[,] Cosines = CosinesOf();

    private readonly double[] coefficients = new double[Terms];

    private readonly double[] integral = new double[Terms + 1];

    /// <summary>Interpolates a function.</summary>
    /// <param name="function">The function, in its own units [-].</param>
    /// <param name="from">Left end [-].</param>
    /// <param name="to">Right end [-], right of the left one.</param>
    public ChebyshevPiece(Func<double, double> function, double from, double to)
    {
        (From, To) = (from, to);
        double middle = (from + to) / 2, half = (to - from) / 2;
        Span<double> values = stackalloc double[Terms];
        for (int k = 0; k < Terms; k++)
        {
            values[k] = function(middle + half * Cosines[1, k]);
            Largest = Math.Max(Largest, Math.Abs(values[k]));
        }

        for (int j = 0; j < Terms; j++)
        {
            double sum = 0;
            for (int k = 0; k < Terms; k++) sum += values[k] * Cosines[j, k];
            coefficients[j] = sum * (j == 0 ? 1.0 : 2.0) / Terms;
        }

        for (int j = Terms - Tail; j < Terms; j++) Remainder = Math.Max(Remainder, Math.Abs(coefficients[j]));

        // ∫T₀ = T₁, ∫T₁ = T₂/4, ∫Tⱼ = Tⱼ₊₁/2(j+1) − Tⱼ₋₁/2(j−1); the constant makes the integral 0 at the left end, where Tⱼ = (−1)ʲ.
        for (int j = 1; j <= Terms; j++)
        {
            double before = j == 1 ? 2 * coefficients[0] : coefficients[j - 1];
            double after = j + 1 < Terms ? coefficients[j + 1] : 0;
            integral[j] = half * (before - after) / (2 * j);
            integral[0] += j % 2 == 0 ? -integral[j] : integral[j];
        }

        Whole = IntegralTo(to);
    }

    /// <summary>Left end [-].</summary>
    public double From { get; }

    /// <summary>Right end [-].</summary>
    public double To { get; }

    /// <summary>Integral over the whole piece [-].</summary>
    public double Whole { get; }

    /// <summary>Largest value of the function at the points [-].</summary>
    public double Largest { get; }

    /// <summary>Largest of the last coefficients, which tells how well the series has converged [-].</summary>
    public double Remainder { get; }

    /// <summary>The function [-].</summary>
    /// <param name="x">Between the ends [-].</param>
    public double At(double x) => Sum(coefficients, Local(x));

    /// <summary>The integral from the left end [-].</summary>
    /// <param name="x">Between the ends [-].</param>
    public double IntegralTo(double x) => Sum(integral, Local(x));

    private double Local(double x) => (2 * x - From - To) / (To - From);

    private static double Sum(double[] series, double x)
    {
        double next = 0, afterNext = 0;
        for (int j = series.Length - 1; j > 0; j--) (next, afterNext) = (2 * x * next - afterNext + series[j], next);
        return x * next - afterNext + series[0];
    }

    private static double[,] CosinesOf()
    {
        var cosines = new double[Terms, Terms];
        for (int j = 0; j < Terms; j++)
            for (int k = 0; k < Terms; k++)
                cosines[j, k] = Math.Cos(Math.PI * j * (k + 0.5) / Terms);
        return cosines;
    }
}

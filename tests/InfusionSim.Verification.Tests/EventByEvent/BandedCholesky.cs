using System.Numerics;

namespace InfusionSim.Verification.Tests.EventByEvent;

/// <summary>Direct solver for symmetric positive definite matrices with few diagonals.</summary>
/// <remarks>
/// A = L Lᵀ row by row inside the band; Golub and Van Loan, Matrix Computations, section on banded systems (from memory). Kept apart from the solver
/// it checks.
/// </remarks>
public sealed class BandedCholesky
{
    private readonly int width;
    private double[] band = [];

    /// <summary>Makes a solver.</summary>
    /// <param name="halfBandwidth">Diagonals below the main one [-].</param>
    public BandedCholesky(int halfBandwidth) => width = halfBandwidth;

    /// <summary>Solves A x = b.</summary>
    /// <param name="rows">Lower band of A, [n × (width + 1)]: entry width of a row is its diagonal, entry width − k its k-th left neighbour. Overwritten.</param>
    /// <param name="count">Number n of unknowns [-].</param>
    /// <param name="rightSide">b on entry, x on return; at least n entries.</param>
    public void Solve(double[] rows, int count, double[] rightSide)
    {
        band = rows;
        int stride = width + 1;
        for (int i = 0; i < count; i++)
        {
            int first = Math.Max(0, i - width);
            for (int j = first; j <= i; j++)
            {
                // Entry (i, k) stands at i·stride + width − i + k, so both rows are contiguous in k.
                int from = Math.Max(first, j - width);
                ReadOnlySpan<double> a = band.AsSpan(i * stride + width - i + from, j - from);
                ReadOnlySpan<double> b = band.AsSpan(j * stride + width - j + from, j - from);
                double rest = band[i * stride + width - i + j] - Dot(a, b);
                band[i * stride + width - i + j] = i == j ? Math.Sqrt(rest) : rest / band[j * stride + width];
            }

            int length = i - first;
            double known = Dot(band.AsSpan(i * stride + width - length, length), rightSide.AsSpan(first, length));
            rightSide[i] = (rightSide[i] - known) / band[i * stride + width];
        }

        for (int i = count - 1; i >= 0; i--)
        {
            double x = rightSide[i] / band[i * stride + width];
            rightSide[i] = x;
            int first = Math.Max(0, i - width);
            for (int k = first; k < i; k++) rightSide[k] -= band[i * stride + width - i + k] * x;
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        Vector<double> sum = Vector<double>.Zero;
        int lanes = Vector<double>.Count, k = 0;
        for (; k <= a.Length - lanes; k += lanes)
            sum += new Vector<double>(a[k..]) * new Vector<double>(b[k..]);
        double total = Vector.Sum(sum);
        for (; k < a.Length; k++) total += a[k] * b[k];
        return total;
    }
}

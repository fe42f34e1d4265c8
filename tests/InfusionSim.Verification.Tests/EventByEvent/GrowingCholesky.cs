using System.Numerics;

namespace InfusionSim.Verification.Tests.EventByEvent;

/// <summary>Direct solver for a symmetric positive definite matrix that gains one row and column at a time.</summary>
/// <remarks>
/// A = L Lᵀ; a new row of A gives one new row of L and leaves the others, and likewise one new entry of L⁻¹b. Golub and
/// Van Loan, Matrix Computations, Cholesky factorisation by rows (from memory). Kept apart from the solver it checks.
/// </remarks>
public sealed class GrowingCholesky
{
    private readonly List<double[]> rows = [];
    private readonly List<int> firsts = [];
    private readonly List<double> halfSolved = [];

    /// <summary>Number of unknowns [-].</summary>
    public int Count => rows.Count;

    /// <summary>Adds an unknown.</summary>
    /// <param name="couplings">Entries of its row of A left of the diagonal, by unknown; unknowns not named have none.</param>
    /// <param name="diagonal">Its diagonal entry of A.</param>
    /// <param name="load">Its entry of b.</param>
    public void Add(IReadOnlyList<(int Unknown, double Value)> couplings, double diagonal, double load)
    {
        int n = Count, first = n;
        foreach ((int unknown, double _) in couplings) first = Math.Min(first, unknown);
        double[] row = new double[n + 1];
        foreach ((int unknown, double value) in couplings) row[unknown] = value;
        double rest = diagonal, known = load;
        for (int i = first; i < n; i++)
        {
            int from = Math.Max(first, firsts[i]);
            double[] earlier = rows[i];
            double value = (row[i] - Dot(earlier.AsSpan(from, i - from), row.AsSpan(from, i - from))) / earlier[i];
            row[i] = value;
            rest -= value * value;
            known -= value * halfSolved[i];
        }

        row[n] = Math.Sqrt(rest);
        rows.Add(row);
        firsts.Add(first);
        halfSolved.Add(known / row[n]);
    }

    /// <summary>Solves A x = b.</summary>
    /// <param name="x">x on return; at least as many entries as unknowns.</param>
    public void Solve(Span<double> x)
    {
        for (int i = 0; i < Count; i++) x[i] = halfSolved[i];
        for (int i = Count - 1; i >= 0; i--)
        {
            double[] row = rows[i];
            int first = firsts[i];
            x[i] /= row[i];
            Subtract(row.AsSpan(first, i - first), x[i], x[first..i]);
        }
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        Vector<double> sum = Vector<double>.Zero;
        int k = 0;
        for (; k <= a.Length - Vector<double>.Count; k += Vector<double>.Count) sum += new Vector<double>(a[k..]) * new Vector<double>(b[k..]);
        double total = Vector.Sum(sum);
        for (; k < a.Length; k++) total += a[k] * b[k];
        return total;
    }

    private static void Subtract(ReadOnlySpan<double> a, double factor, Span<double> from)
    {
        int k = 0;
        for (; k <= a.Length - Vector<double>.Count; k += Vector<double>.Count) (
            new Vector<double>(from[k..]) - factor * new Vector<double>(a[k..])).CopyTo(from[k..]);
        for (; k < a.Length; k++) from[k] -= factor * a[k];
    }
}

using MathNet.Numerics.LinearAlgebra;

namespace InfusionSim.Numerics.Lattice;

/// <summary>Cells of a lattice held at one pressure: how much flows through each and how large a circle they act like.</summary>
public sealed class ClusterElectrode
{
    private ClusterElectrode(IReadOnlyList<LatticeCell> cells, double[] charges, double equivalentRadius)
    {
        Cells = cells;
        Charges = charges;
        EquivalentRadius = equivalentRadius;
    }

    /// <summary>The cells.</summary>
    public IReadOnlyList<LatticeCell> Cells { get; }

    /// <summary>Share of the flow that passes through each cell [-], in the order of <see cref="Cells"/>; adds up to 1 and is 0 for a cell that conducts to cells of the cluster alone.</summary>
    public IReadOnlyList<double> Charges { get; }

    /// <summary>Radius, in cells, of the circle in the stretched plane whose pressure far away is the same at the same flow [-].</summary>
    public double EquivalentRadius { get; }

    /// <summary>Solves for the charges of any set of cells.</summary>
    /// <remarks>Equal pressure: Σⱼ a(xᵢ − xⱼ) qⱼ = P for every cell, Σ qⱼ = 1; the far field (ln r + c)/2π equals P at the equivalent radius (derived).</remarks>
    /// <param name="kernel">Kernel of the lattice.</param>
    /// <param name="cells">The cells, at least one, each once.</param>
    public static ClusterElectrode Of(PotentialKernel kernel, IReadOnlyList<LatticeCell> cells)
    {
        ArgumentNullException.ThrowIfNull(kernel);
        ArgumentOutOfRangeException.ThrowIfZero(cells.Count);
        int[] rim = RimOf(kernel.Stencil, cells);
        int n = rim.Length;
        Matrix<double> system = Matrix<double>.Build.Dense(n + 1, n + 1);
        Vector<double> right = Vector<double>.Build.Dense(n + 1);
        for (int i = 0; i < n; i++)
        {
            LatticeCell a = cells[rim[i]];
            for (int j = 0; j < n; j++)
            {
                LatticeCell b = cells[rim[j]];
                system[i, j] = kernel.At(new(a.Column - b.Column, a.Row - b.Row));
            }

            system[i, n] = -1;
            system[n, i] = 1;
        }

        right[n] = 1;
        Vector<double> solution = system.Solve(right);
        double[] charges = new double[cells.Count];
        for (int i = 0; i < n; i++) charges[rim[i]] = solution[i];
        return new(cells, charges, Math.Exp(2 * Math.PI * solution[n] - kernel.FarFieldConstant));
    }

    // A cell whose neighbours all stand at its own pressure passes nothing.
    private static int[] RimOf(SellingStencil stencil, IReadOnlyList<LatticeCell> cells)
    {
        var all = new HashSet<LatticeCell>(cells);
        return [.. Enumerable.Range(0, cells.Count).Where(k => stencil.Arms.Any(arm => LeadsOut(cells[k], arm)))];

        bool LeadsOut(LatticeCell cell, LatticeArm arm) =>
            !all.Contains(new(cell.Column + arm.Right, cell.Row + arm.Up)) || !all.Contains(new(cell.Column - arm.Right, cell.Row - arm.Up));
    }
}

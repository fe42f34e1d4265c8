using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Multigrid;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Solves A x = b with all cells taking part: the panel when everything is wet. One instance serves one thread.</summary>
public sealed class SteadySolver
{
    private readonly WetSystem _system;
    private readonly Field<double> _load, _nothing, _unknown;

    /// <summary>Makes a solver.</summary>
    /// <param name="matrix">Conductances; every group of cells that takes part must have a way to a fixed pressure.</param>
    /// <param name="takesPart">Which cells take part; the others hold 0. [rows × columns], x fastest.</param>
    public SteadySolver(LatticeOperator matrix, ReadOnlySpan<bool> takesPart)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        if (takesPart.Length != matrix.CellCount) throw new ArgumentException($"The matrix has {matrix.CellCount} cells; {takesPart.Length} are named.", nameof(takesPart));
        _system = new WetSystem(matrix);
        _load = new(_system.Layout);
        _nothing = new(_system.Layout);
        _unknown = new(_system.Layout);
        for (int cell = 0; cell < takesPart.Length; cell++)
            if (takesPart[cell]) _system.SetWet(cell % matrix.Columns, cell / matrix.Columns, wet: true);
    }

    /// <summary>Solves for one right-hand side.</summary>
    /// <param name="load">Right-hand side b. [rows × columns], x fastest.</param>
    /// <param name="solution">Where the solution goes; 0 in cells that take no part. [rows × columns], x fastest.</param>
    /// <param name="tolerance">Largest sum of imbalances relative to the sum of the right-hand side [-].</param>
    /// <param name="cancellation">Stops the iteration.</param>
    public SolveReport Solve(ReadOnlySpan<double> load, Span<double> solution, double tolerance, CancellationToken cancellation = default)
    {
        double largest = 0;
        foreach (double value in load) largest = Math.Max(largest, Math.Abs(value));
        if (largest == 0)
        {
            solution.Clear();
            return new(StopReason.Converged, 0, 0, 0);
        }

        // The correction is single precision: bring the numbers near 1 first.
        double[] scaled = new double[load.Length];
        for (int cell = 0; cell < scaled.Length; cell++) scaled[cell] = load[cell] / largest;
        _load.CopyFrom(scaled);
        _unknown.Clear();
        SolveReport report = _system.SolveLinear(_unknown, _load, 1, _nothing, 0, tolerance, cancellation);
        _unknown.CopyTo(solution);
        for (int cell = 0; cell < solution.Length; cell++) solution[cell] *= largest / _system.ConductanceScale;
        return report;
    }
}

using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Lines;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Complementarity;

/// <summary>Solves A x = b with all nodes taking part: the panel when everything is wet. One instance serves one thread.</summary>
public sealed class SteadySolver
{
    private readonly WetSystem _system;
    private readonly NodeField _load, _unknown;

    /// <summary>Makes a solver.</summary>
    /// <param name="matrix">Conductances; every group of nodes that takes part must have a way to a fixed pressure.</param>
    /// <param name="takesPart">Which nodes take part; the others hold 0. [nodes].</param>
    public SteadySolver(LatticeOperator matrix, ReadOnlySpan<bool> takesPart)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        if (takesPart.Length != matrix.NodeCount) throw new ArgumentException($"The matrix has {matrix.NodeCount} nodes; {takesPart.Length} are named.", nameof(takesPart));
        _system = new WetSystem(matrix);
        _load = _system.MakeField();
        _unknown = _system.MakeField();
        for (int node = 0; node < takesPart.Length; node++)
        {
            if (!takesPart[node]) continue;
            if (node < matrix.CellCount) _system.SetWet(_system.AtOf(node), wet: true);
            else _system.SetLineWet(node - matrix.CellCount, wet: true);
        }
    }

    /// <summary>Solves for one right-hand side.</summary>
    /// <param name="load">Right-hand side b. [nodes].</param>
    /// <param name="solution">Where the solution goes; 0 in nodes that take no part. [nodes].</param>
    /// <param name="tolerance">Largest sum of imbalances relative to the right-hand side, of line nodes to what is left of it once the part that flows back to fixed pressures is taken off [-].</param>
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
        _load.CopyFrom(load, 1 / largest);
        _unknown.Clear();
        SolveReport report = _system.SolveLinear(_unknown, _load, tolerance, cancellation);
        _unknown.CopyTo(solution, largest / _system.ConductanceScale);
        return report;
    }
}

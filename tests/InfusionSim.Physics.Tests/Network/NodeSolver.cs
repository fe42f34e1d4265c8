using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Tests.Network;

/// <summary>
/// States of cells and line nodes without any of the project's solvers: wet sets corrected one after another, conjugate gradients in between. For
/// small grids.
/// </summary>
internal sealed class NodeSolver
{
    private readonly FillProblem problem;
    private readonly List<NodeNeighbour>[] neighbours;
    private readonly double[] diagonal;

    public NodeSolver(FillProblem problem)
    {
        this.problem = problem;
        neighbours = [.. Enumerable.Range(0, problem.Operator.NodeCount).Select(node =>
        {
            List<NodeNeighbour> found = [];
            problem.Operator.CollectNeighbours(node, found);
            return found;
        })];
        diagonal = [.. Enumerable.Range(0, problem.Operator.NodeCount).Select(problem.Operator.DiagonalOf)];
    }

    /// <summary>Accumulated pressure and share of each node at a clock.</summary>
    public (double[] Accumulated, double[] Saturation) StateAt(double clock)
    {
        double[] supply = problem.Supply(), accumulated = new double[diagonal.Length];
        bool[] wet = [.. problem.PoreVolume.Select(volume => volume > 0)];
        for (int step = 0; step < 10 * diagonal.Length; step++)
        {
            accumulated = Solve([.. supply.Select((s, node) => s * clock - problem.PoreVolume[node])], wet);
            bool changed = false;
            for (int node = 0; node < wet.Length; node++)
            {
                if (problem.PoreVolume[node] == 0) continue;
                bool wanted = wet[node] ? accumulated[node] > 0 : Offered(node) > problem.PoreVolume[node] * (1 + 1e-9);
                changed |= wanted != wet[node];
                wet[node] = wanted;
            }

            if (!changed) return (accumulated, [.. Enumerable.Range(0, wet.Length).Select(node => wet[node] ? 1 : problem.PoreVolume[node] == 0 ? 0 : Offered(node) / problem.PoreVolume[node])]);
        }

        throw new InvalidOperationException("The wet set does not come to rest.");

        double Offered(int node) => supply[node] * clock + neighbours[node].Sum(
            other => other.Conductance * accumulated[other.Node]) - diagonal[node] * accumulated[node];
    }

    /// <summary>Pressure of each node when all is wet.</summary>
    public double[] SteadyPressure() => Solve(problem.Supply(), [.. diagonal.Select(d => d > 0)]);

    /// <summary>Clock at which each node is full when no vent passes resin.</summary>
    public double[] FullClocks() => Solve(problem.PoreVolume, [.. diagonal.Select(d => d > 0)]);

    private double[] Solve(double[] right, bool[] takesPart)
    {
        int n = right.Length;
        double[] x = new double[n], r = new double[n], z = new double[n], p = new double[n], ap = new double[n];
        for (int k = 0; k < n; k++) r[k] = takesPart[k] ? right[k] : 0;
        double rho = 0, first = 0;
        for (int step = 0; step < 50 * n + 1000; step++)
        {
            for (int k = 0; k < n; k++) z[k] = takesPart[k] ? r[k] / diagonal[k] : 0;
            double next = Dot(r, z);
            if (step == 0) first = next;
            if (next <= 1e-28 * first) return x;
            double beta = step == 0 ? 0 : next / rho;
            rho = next;
            for (int k = 0; k < n; k++) p[k] = z[k] + beta * p[k];
            for (int k = 0; k < n; k++)
            {
                ap[k] = 0;
                if (!takesPart[k]) continue;
                ap[k] = problem.Operator.Anchor[k] * p[k];
                foreach (NodeNeighbour other in neighbours[k]) ap[k] += other.Conductance * (p[k] - p[other.Node]);
            }

            double alpha = rho / Dot(p, ap);
            for (int k = 0; k < n; k++)
            {
                x[k] += alpha * p[k];
                r[k] -= alpha * ap[k];
            }
        }

        throw new InvalidOperationException("No convergence.");
    }

    private static double Dot(double[] x, double[] y)
    {
        double sum = 0;
        for (int k = 0; k < x.Length; k++) sum += x[k] * y[k];
        return sum;
    }
}

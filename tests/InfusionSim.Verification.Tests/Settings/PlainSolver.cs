using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Verification.Tests.Settings;

/// <summary>
/// Textbook solvers, slow and simple, that share nothing with the product's: conjugate gradients for a panel that is wet all over, projected
/// relaxation for one that fills.
/// </summary>
public static class PlainSolver
{
    /// <summary>Pressure in each node when all is wet and every feed stands at the driving pressure [-].</summary>
    /// <param name="problem">The problem; no cell is cut off from all feeds and open vents.</param>
    public static double[] SteadyPressure(FillProblem problem) => Solve(problem.Operator, problem.Supply());

    /// <summary>Solves A x = b by conjugate gradients, preconditioned with the diagonal.</summary>
    /// <param name="a">The operator.</param>
    /// <param name="right">Right-hand side.</param>
    /// <param name="residual">Largest residual over the first one [-].</param>
    public static double[] Solve(LatticeOperator a, double[] right, double residual = 1e-12)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(right);
        int n = a.NodeCount;
        double[] diagonal = [.. Enumerable.Range(0, n).Select(a.DiagonalOf)];
        double[] x = new double[n], r = [.. right.Select((value, node) => diagonal[node] > 0 ? value : 0)], z = new double[n], p = new double[n], product = new double[n];
        double before = 0, first = 0;
        for (int k = 0; k < 20 * n + 100; k++)
        {
            for (int node = 0; node < n; node++) z[node] = diagonal[node] > 0 ? r[node] / diagonal[node] : 0;
            double now = Dot(r, z);
            if (k == 0) first = now;
            if (now <= residual * residual * first) return x;
            double beta = k == 0 ? 0 : now / before;
            before = now;
            for (int node = 0; node < n; node++) p[node] = z[node] + beta * p[node];
            Apply(a, p, product);
            double alpha = now / Dot(p, product);
            for (int node = 0; node < n; node++)
            {
                x[node] += alpha * p[node];
                r[node] -= alpha * product[node];
            }
        }

        throw new InvalidOperationException("No convergence.");
    }

    /// <summary>Saturation of each node at a clock, by projected successive over-relaxation of w ≥ 0, C − (b − A w) ≥ 0 [-].</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="clock">Drive clock [-].</param>
    public static double[] Saturation(FillProblem problem, double clock)
    {
        ArgumentNullException.ThrowIfNull(problem);
        const double Relaxation = 1.9, Tolerance = 1e-9;
        LatticeOperator a = problem.Operator;
        double[] supply = [.. problem.Supply().Select(value => value * clock)], capacity = problem.PoreVolume, w = new double[a.NodeCount];
        int[] nodes = [.. Enumerable.Range(0, a.NodeCount).Where(node => a.DiagonalOf(node) > 0)];
        double[] diagonal = [.. nodes.Select(a.DiagonalOf)];
        NodeNeighbour[][] neighbours = [.. nodes.Select(node => NeighboursOf(a, node))];
        double scale = clock;
        for (int sweep = 0; sweep < 100_000; sweep++)
        {
            double largest = 0;
            for (int k = 0; k < nodes.Length; k++)
            {
                int node = nodes[k];
                double sum = supply[node] - capacity[node];
                foreach (NodeNeighbour neighbour in neighbours[k]) sum += neighbour.Conductance * w[neighbour.Node];
                double next = Math.Max(0, w[node] + Relaxation * (sum / diagonal[k] - w[node]));
                largest = Math.Max(largest, Math.Abs(next - w[node]));
                w[node] = next;
            }

            if (largest < Tolerance * scale * 1e-3) break;
        }

        double[] flow = new double[a.NodeCount], saturation = new double[a.NodeCount];
        Apply(a, w, flow);
        for (int node = 0; node < saturation.Length; node++)
            if (capacity[node] > 0) saturation[node] = Math.Clamp((supply[node] - flow[node]) / capacity[node], 0, 1);
        return saturation;
    }

    private static NodeNeighbour[] NeighboursOf(LatticeOperator a, int node)
    {
        List<NodeNeighbour> neighbours = [];
        a.CollectNeighbours(node, neighbours);
        return [.. neighbours];
    }

    private static void Apply(LatticeOperator a, double[] x, double[] product)
    {
        for (int node = 0; node < x.Length; node++) product[node] = a.Anchor[node] * x[node];
        foreach (StencilWay way in a.Ways)
        {
            int step = way.Up * a.Columns + way.Right;
            for (int cell = 0; cell < a.CellCount; cell++)
            {
                if (way.Conductance[cell] > 0) Exchange(cell, cell + step, way.Conductance[cell]);
            }
        }

        for (int cell = 0; cell < a.Above.Length; cell++)
        {
            if (a.Above[cell] > 0) Exchange(cell, cell + a.CellsInLayer, a.Above[cell]);
        }

        foreach (NodeLink link in a.Links) Exchange(link.First, link.Second, link.Conductance);

        void Exchange(int i, int j, double conductance)
        {
            double flow = conductance * (x[i] - x[j]);
            product[i] += flow;
            product[j] -= flow;
        }
    }

    private static double Dot(double[] x, double[] y)
    {
        double sum = 0;
        for (int k = 0; k < x.Length; k++) sum += x[k] * y[k];
        return sum;
    }
}

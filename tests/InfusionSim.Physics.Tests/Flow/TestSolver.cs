using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Tests.Flow;

/// <summary>Conjugate gradients without any of the project's solvers, for cells that a feed or open vent holds.</summary>
internal static class TestSolver
{
    /// <summary>Clock at which the last cell is full when no vent passes resin: the largest u of A u = C.</summary>
    public static double FillClock(FillProblem problem) => Solve(problem.Operator, problem.PoreVolume).Max();

    /// <summary>Pressure in each cell when all is wet.</summary>
    public static double[] SteadyPressure(FillProblem problem)
    {
        double[] right = new double[problem.Operator.NodeCount];
        foreach (var contact in problem.Feeds.SelectMany(feed => feed.Contacts)) right[contact.Cell] += contact.Conductance;
        return Solve(problem.Operator, right);
    }

    /// <summary>Flow through all feeds when all is wet, per driving pressure over viscosity [m³].</summary>
    public static double SteadyFlow(FillProblem problem)
    {
        double[] pressure = SteadyPressure(problem);
        return problem.Feeds.SelectMany(feed => feed.Contacts).Sum(contact => contact.Conductance * (1 - pressure[contact.Cell]));
    }

    public static double[] Solve(LatticeOperator a, double[] right)
    {
        int n = a.NodeCount;
        double[] x = new double[n], r = (double[])right.Clone(), z = new double[n], p = new double[n], ap = new double[n];
        double[] inverse = [.. Enumerable.Range(0, n).Select(cell => a.DiagonalOf(cell) is > 0 and double d ? 1 / d : 0)];
        for (int cell = 0; cell < n; cell++)
        {
            if (inverse[cell] == 0) r[cell] = 0;
        }

        double rho = 0, first = 0;
        for (int k = 0; k < 20 * n + 100; k++)
        {
            for (int cell = 0; cell < n; cell++) z[cell] = inverse[cell] * r[cell];
            double next = Dot(r, z);
            if (k == 0) first = next;
            if (next <= 1e-28 * first) return x;
            double beta = k == 0 ? 0 : next / rho;
            rho = next;
            for (int cell = 0; cell < n; cell++) p[cell] = z[cell] + beta * p[cell];
            Apply(a, p, ap);
            double alpha = rho / Dot(p, ap);
            for (int cell = 0; cell < n; cell++)
            {
                x[cell] += alpha * p[cell];
                r[cell] -= alpha * ap[cell];
            }
        }

        throw new InvalidOperationException("No convergence.");
    }

    private static void Apply(LatticeOperator a, double[] x, double[] y)
    {
        for (int cell = 0; cell < x.Length; cell++) y[cell] = a.Anchor[cell] * x[cell];
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
            y[i] += flow;
            y[j] -= flow;
        }
    }

    private static double Dot(double[] x, double[] y)
    {
        double sum = 0;
        for (int k = 0; k < x.Length; k++) sum += x[k] * y[k];
        return sum;
    }
}

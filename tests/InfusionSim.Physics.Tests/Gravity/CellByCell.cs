using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Tests.Gravity;

/// <summary>
/// A fill with weight, followed from one full cell to the next with exact steps in time and a dense elimination for each; shares nothing with the
/// march but the conductances.
/// </summary>
internal static class CellByCell
{
    /// <summary>Clock at which each cell is full; +∞ where it never is.</summary>
    public static double[] FullClocks(FillProblem problem)
    {
        LatticeOperator network = problem.Operator;
        int count = network.CellCount;
        double[] heads = problem.Heads!, supply = problem.Supply(), held = new double[count], full = new double[count];
        Array.Fill(full, double.PositiveInfinity);
        double clock = 0;
        List<int> wet = [];
        while (true)
        {
            double[] pressure = PressureOf(problem, wet, heads, supply);
            double[] inflow = new double[count];
            List<NodeNeighbour> neighbours = [];
            double step = double.PositiveInfinity;
            int next = -1;
            for (int cell = 0; cell < count; cell++)
            {
                if (problem.PoreVolume[cell] == 0 || double.IsFinite(full[cell])) continue;
                inflow[cell] = supply[cell];
                network.CollectNeighbours(cell, neighbours);
                foreach ((int other, double way) in neighbours)
                    if (double.IsFinite(full[other])) inflow[cell] += way * (pressure[other] + heads[other] - heads[cell]);
                double left = (problem.PoreVolume[cell] - held[cell]) / inflow[cell];
                if (inflow[cell] <= 0 || left >= step) continue;
                (step, next) = (left, cell);
            }

            if (next < 0) return full;
            clock += step;
            for (int cell = 0; cell < count; cell++) held[cell] += inflow[cell] * step;
            held.Min().ShouldBeGreaterThan(-1e-9 * problem.PoreVolume.Max(), "no cell gives back what it does not hold, or the two schemes differ");
            full[next] = clock;
            wet.Add(next);
        }
    }

    private static double[] PressureOf(FillProblem problem, List<int> wet, double[] heads, double[] supply)
    {
        int n = wet.Count;
        double[,] a = new double[n, n + 1];
        List<NodeNeighbour> neighbours = [];
        for (int row = 0; row < n; row++)
        {
            int cell = wet[row];
            a[row, row] = problem.Operator.DiagonalOf(cell);
            a[row, n] = supply[cell];
            problem.Operator.CollectNeighbours(cell, neighbours);
            foreach ((int other, double way) in neighbours)
            {
                a[row, n] += way * (heads[other] - heads[cell]);
                int column = wet.IndexOf(other);
                if (column >= 0) a[row, column] -= way;
            }
        }

        double[] pressure = new double[problem.Operator.CellCount];
        for (int pivot = 0; pivot < n; pivot++)
        {
            for (int row = pivot + 1; row < n; row++)
            {
                double factor = a[row, pivot] / a[pivot, pivot];
                if (factor == 0) continue;
                for (int column = pivot; column <= n; column++) a[row, column] -= factor * a[pivot, column];
            }
        }

        for (int row = n - 1; row >= 0; row--)
        {
            double sum = a[row, n];
            for (int column = row + 1; column < n; column++) sum -= a[row, column] * pressure[wet[column]];
            pressure[wet[row]] = sum / a[row, row];
        }

        return pressure;
    }
}

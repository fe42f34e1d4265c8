using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Tests.Complementarity;

public class NetworkSolverTests
{
    public static TheoryData<int, int, int, bool, int, double, int> Networks => new()
    {
        { 26, 19, 3, false, 0, 1.0, 1187 },
        { 21, 24, 1, true, 0, 1.0, 2339 },
        { 24, 22, 4, true, 0, 0.5, 3467 },
        { 24, 22, 1, false, 14, 0.5, 4583 },
        { 30, 17, 3, false, 19, 1.0, 5651 },
        { 18, 25, 3, true, 27, 1.0, 6763 },
        { 4, 3, 2, false, 5, 0.5, 7877 },
        { 1, 1, 5, false, 0, 0.0, 9001 },
    };

    [Theory]
    [MemberData(nameof(Networks))]
    public void SolveSteady_LayersWaysAndLines_LeavesNothingUnbalanced(int columns, int rows, int layers, bool slanted, int lineNodes, double spread, int seed)
    {
        RandomNetwork network = new(columns, rows, layers, slanted, lineNodes, spread, seed);
        double[] pressure = new double[network.Capacity.Length];

        // Couplings through the thickness are up to 10,000 times those in the plane, which costs four of sixteen digits.
        SolveReport report = new SteadySolver(network.Operator, network.TakesPart).Solve(network.Capacity, pressure, 1e-10);
        report.Reason.ShouldBe(StopReason.Converged, report.ToString());
        double[] offered = network.Offered(pressure, 0);
        double largest = network.Capacity.Max();

        for (int node = 0; node < pressure.Length; node++)
            if (network.TakesPart[node]) (Math.Abs(offered[node] + network.Capacity[node]) / largest).ShouldBeLessThan(1e-7, $"node {node}, {report}");
    }

    [Theory]
    [MemberData(nameof(Networks))]
    public void Solve_LayersWaysAndLines_MeetsTheThreeConditions(int columns, int rows, int layers, bool slanted, int lineNodes, double spread, int seed)
    {
        RandomNetwork network = new(columns, rows, layers, slanted, lineNodes, spread, seed);
        ObstacleSolver solver = new(network.Operator, network.Capacity, network.Supply);
        double[] w = new double[network.Capacity.Length];
        new SteadySolver(network.Operator, network.TakesPart).Solve(network.Capacity, w, 1e-11);
        double whole = w.Max(), mean = network.Capacity.Sum() / network.Capacity.Count(static volume => volume > 0);
        foreach (double share in new[] { 0.01, 0.1, 0.35, 0.7, 0.99 })
        {
            SolveReport report = solver.Solve(share * whole, 1e-11);
            report.Reason.ShouldNotBe(StopReason.IterationLimit, $"{share} {report}");
            solver.CopyAccumulatedPressure(w);
            double[] offered = network.Offered(w, share * whole), saturation = new double[w.Length];
            solver.CopySaturation(saturation);
            for (int node = 0; node < w.Length; node++)
            {
                double capacity = network.Capacity[node];
                w[node].ShouldBeGreaterThanOrEqualTo(0);

                // Solved to 1e-11 of all that the wet nodes hold, some thousand times a node.
                if (network.TakesPart[node]) offered[node].ShouldBeLessThanOrEqualTo(
                    capacity + 1e-7 * mean, $"node {node} holds more than it can at {share}, {report}");
                if (w[node] > 0) offered[node].ShouldBe(capacity, 1e-7 * mean, $"full node {node} at {share}, {report}");
                if (capacity > 0) (saturation[node] * capacity).ShouldBe(Math.Clamp(offered[node], 0, capacity), 1e-7 * mean, $"node {node}");
            }
        }
    }

    [Theory]
    [InlineData(1e4)]
    [InlineData(1e8)]
    [InlineData(1e10)]
    public void Solve_LineThatConductsManyMillionTimesBetterThanTheCloth_GivesWhatIsHeld(double ratio)
    {
        const int Rows = 5, Nodes = 5;
        LatticeOperator matrix = new(20, Rows, 1, Nodes);
        double[] capacity = new double[matrix.NodeCount], supply = new double[matrix.NodeCount];
        for (int cell = 0; cell < matrix.CellCount; cell++)
        {
            capacity[cell] = 1 + 0.1 * (cell % 7);
            if (cell % 20 < 19) matrix.East[cell] = 1;
            if (cell / 20 < Rows - 1) matrix.North[cell] = 1;
        }

        for (int node = matrix.CellCount; node < matrix.NodeCount; node++)
        {
            capacity[node] = 0.3;
            matrix.Link((node - matrix.CellCount) * 20, node, 2.3);
            if (node > matrix.CellCount) matrix.Link(node - 1, node, ratio);
        }

        matrix.Anchor[matrix.CellCount] = supply[matrix.CellCount] = ratio;
        ObstacleSolver solver = new(matrix, capacity, supply);
        double[] saturation = new double[matrix.NodeCount], given = new double[Nodes];
        foreach (double clock in new[] { 7, 90, 215.3 })
        {
            SolveReport report = solver.Solve(clock, 1e-13);
            solver.CopySaturation(saturation);
            solver.CopyLineSupply(given);

            report.Reason.ShouldBe(StopReason.Converged, report.ToString());
            double held = saturation.Zip(capacity, static (share, volume) => share * volume).Sum();
            held.ShouldBeInRange(capacity.Sum() / 10, capacity.Sum() * 0.99);
            given.Sum().ShouldBe(held, 1e-12 * held, report.ToString());
        }
    }

    [Theory]
    [InlineData(1e-16)]
    [InlineData(1e-12)]
    [InlineData(1e-8)]
    public void SolveSteady_CouplingThroughTheThickness_HardlyChangesTheCycles(double coupling)
    {
        // Half covered by a layer that conducts ten times as well; one layer of the same grid needs 9 to 12 cycles.
        LatticeOperator matrix = new(96, 96, 3), single = new(96, 96);
        for (int node = 0; node < matrix.CellCount; node++)
        {
            int column = node % 96, row = node / 96 % 96, layer = node / (96 * 96);
            if (layer == 2 && column > 48) continue;
            double along = layer == 2 ? 3e-12 : 1e-13;
            if (column < 95 && !(layer == 2 && column == 48)) matrix.East[node] = along;
            if (row < 95) matrix.North[node] = along;
            if (layer < 2 && !(layer == 1 && column > 48)) matrix.Above[node] = coupling;
            if (column == 0) matrix.Anchor[node] = 2 * along;
            if (layer > 0) continue;
            if (column < 95) single.East[node] = along;
            if (row < 95) single.North[node] = along;
            if (column == 0) single.Anchor[node] = 2 * along;
        }

        int layered = Cycles(matrix), alone = Cycles(single);
        layered.ShouldBeLessThanOrEqualTo(alone + 5, $"{alone} cycles with one layer");
    }

    private static int Cycles(LatticeOperator matrix)
    {
        bool[] takesPart = [.. Enumerable.Range(0, matrix.NodeCount).Select(node => matrix.DiagonalOf(node) > 0)];
        double[] load = [.. takesPart.Select(static takes => takes ? 1.0 : 0)];
        SolveReport report = new SteadySolver(matrix, takesPart).Solve(load, new double[load.Length], 1e-8);
        report.Reason.ShouldBe(StopReason.Converged);
        return report.Cycles;
    }
}

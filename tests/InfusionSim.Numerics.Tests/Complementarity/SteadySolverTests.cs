using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Stencils;
using MathNet.Numerics.LinearAlgebra;

namespace InfusionSim.Numerics.Tests.Complementarity;

public class SteadySolverTests
{
    [Theory]
    [InlineData(20, 15, 0.0, 4711)]
    [InlineData(17, 31, 1.0, 815)]
    [InlineData(33, 8, 2.0, 2718)]
    [InlineData(1, 40, 1.0, 314)]
    [InlineData(40, 1, 1.0, 159)]
    [InlineData(1, 1, 0.0, 577)]
    public void Solve_RandomConductances_AgreesWithADenseSolver(int columns, int rows, double spread, int seed)
    {
        RandomMatrix problem = new(columns, rows, spread, seed, holes: columns * rows < 50 ? 0 : 0.1);
        Vector<double> expected = problem.Dense().LU().Solve(Vector<double>.Build.DenseOfArray(problem.Capacity));
        double[] solution = new double[problem.Capacity.Length];

        SolveReport report = new SteadySolver(problem.Operator, problem.TakesPart).Solve(problem.Capacity, solution, 1e-12);

        // The dense solver is good to rounding times condition, about 1e-11 here.
        double largest = expected.AbsoluteMaximum();
        for (int cell = 0; cell < solution.Length; cell++)
            (Math.Abs(solution[cell] - (problem.TakesPart[cell] ? expected[cell] : 0)) / largest).ShouldBeLessThan(1e-9, $"cell {cell}, {report}");
    }

    [Fact]
    public void Solve_TubeTenThousandTimesAsConductive_TakesFewCycles()
    {
        LatticeOperator matrix = new(128, 128);
        bool[] takesPart = new bool[128 * 128];
        double[] load = new double[128 * 128];
        for (int cell = 0; cell < load.Length; cell++)
        {
            takesPart[cell] = true;
            load[cell] = 1;
            if (cell % 128 != 127) matrix.East[cell] = 1;
            if (cell < 127 * 128) matrix.North[cell] = cell % 128 == 41 ? 1e4 : 1;
        }

        matrix.Anchor[41] = 2e4;
        SolveReport report = new SteadySolver(matrix, takesPart).Solve(load, new double[load.Length], 1e-9);

        report.Reason.ShouldBe(StopReason.Converged);
        report.Cycles.ShouldBeLessThan(30);
    }

    [Fact]
    public void Solve_NothingOffered_AnswersNothing()
    {
        RandomMatrix problem = new(12, 9, 1, 66);
        double[] solution = [.. Enumerable.Repeat(7.0, problem.Capacity.Length)];
        new SteadySolver(problem.Operator, problem.TakesPart).Solve(new double[solution.Length], solution, 1e-9);
        solution.ShouldAllBe(value => value == 0);
    }
}

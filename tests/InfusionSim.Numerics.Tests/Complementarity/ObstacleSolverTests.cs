using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Tests.Complementarity;

public class ObstacleSolverTests
{
    [Theory]
    [InlineData(30, 20, 0.0, 1729)]
    [InlineData(30, 20, 1.0, 6174)]
    [InlineData(25, 40, 1.5, 8128)]
    public void Solve_RandomPanel_MeetsTheThreeConditions(int columns, int rows, double spread, int seed)
    {
        RandomMatrix problem = new(columns, rows, spread, seed);
        ObstacleSolver solver = new(problem.Operator, problem.Capacity, problem.Supply);
        double whole = FillClock(problem);
        foreach (double share in new[] { 0.01, 0.1, 0.35, 0.7, 0.99 })
        {
            solver.Solve(share * whole, 1e-11).Reason.ShouldNotBe(StopReason.IterationLimit);
            double[] w = Accumulated(solver, problem), offered = Offered(problem, w, share * whole);
            for (int cell = 0; cell < w.Length; cell++)
            {
                double capacity = problem.Capacity[cell];
                w[cell].ShouldBeGreaterThanOrEqualTo(0);
                offered[cell].ShouldBeLessThanOrEqualTo(capacity * (1 + 1e-7), $"cell {cell} holds more than it can at {share}");
                if (w[cell] > 0) offered[cell].ShouldBe(capacity, 1e-7 * capacity, $"full cell {cell} at {share}");
            }
        }
    }

    [Fact]
    public void Solve_SameClockFromBeforeAndFromAfter_FindsTheSameState()
    {
        RandomMatrix problem = new(32, 24, 1, 90210);
        double clock = 0.4 * FillClock(problem);
        ObstacleSolver upwards = new(problem.Operator, problem.Capacity, problem.Supply);
        upwards.Solve(0.3 * clock, 1e-11);
        upwards.Solve(clock, 1e-11);
        ObstacleSolver downwards = new(problem.Operator, problem.Capacity, problem.Supply);
        downwards.Solve(2.2 * clock, 1e-11);
        downwards.Solve(clock, 1e-11);
        Saturation(upwards, problem).Zip(Saturation(downwards, problem), static (a, b) => Math.Abs(a - b)).Max().ShouldBeLessThan(1e-7);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.9)]
    [InlineData(3.0)]
    public void Guess_NearOrFarOff_DoesNotDecideTheStateNorTheOneAfter(double factor)
    {
        RandomMatrix problem = new(32, 24, 1, 90210);
        double clock = 0.4 * FillClock(problem);
        ObstacleSolver plain = new(problem.Operator, problem.Capacity, problem.Supply), guessed = new(problem.Operator, problem.Capacity, problem.Supply);
        plain.Solve(clock, 1e-11);
        guessed.Solve(0.8 * clock, 1e-11);
        double[] guess = [.. Accumulated(plain, problem).Select(w => factor * w)];
        guessed.Guess(guess, [.. guess.Select(w => w / clock)]);
        guessed.Solve(clock, 1e-11).Reason.ShouldNotBe(StopReason.IterationLimit);
        Saturation(plain, problem).Zip(Saturation(guessed, problem), static (a, b) => Math.Abs(a - b)).Max().ShouldBeLessThan(1e-7);
        plain.Solve(1.3 * clock, 1e-11);
        guessed.Solve(1.3 * clock, 1e-11);
        Saturation(plain, problem).Zip(Saturation(guessed, problem), static (a, b) => Math.Abs(a - b)).Max().ShouldBeLessThan(1e-7);
    }

    [Fact]
    public void Restart_FromAStateOnTheWay_GoesOnToWhereOneFillGoes()
    {
        // Cut in two, the second half begun in the same solver and in a new one: what is full, and what all hold, is the same as without the cut.
        RandomMatrix problem = new(32, 24, 1, 496);
        double clock = 0.5 * FillClock(problem);
        ObstacleSolver whole = new(problem.Operator, problem.Capacity, problem.Supply), first = new(problem.Operator, problem.Capacity, problem.Supply);
        whole.Solve(clock, 1e-12);
        first.Solve(0.6 * clock, 1e-12);
        first.SolvePressure(1e-9);
        double[] before = Saturation(first, problem), room = [.. problem.Capacity.Zip(before, static (capacity, share) => capacity * (1 - share))];
        bool[] isFull = [.. before.Zip(problem.Capacity, static (share, capacity) => capacity > 0 && share >= 1)];
        double held = problem.Capacity.Sum() - room.Sum();
        ObstacleSolver anew = new(problem.Operator, room, problem.Supply, isFull, held);
        first.Restart(room, problem.Supply, isFull, held);
        foreach (ObstacleSolver second in new[] { anew, first })
        {
            second.Solve(0.4 * clock, 1e-12).Reason.ShouldNotBe(StopReason.IterationLimit);
            double[] added = Saturation(second, problem), expected = Saturation(whole, problem);
            for (int cell = 0; cell < added.Length; cell++)
                (added[cell] >= 1 ? 1 : before[cell] + (1 - before[cell]) * added[cell]).ShouldBe(expected[cell], 1e-7, $"cell {cell}");
        }
    }

    [Fact]
    public void Solve_LaterClock_NeverDriesACell()
    {
        RandomMatrix problem = new(28, 28, 1.2, 33550336);
        ObstacleSolver solver = new(problem.Operator, problem.Capacity, problem.Supply);
        double whole = FillClock(problem);
        double[] before = new double[problem.Capacity.Length];
        for (int step = 1; step <= 25; step++)
        {
            solver.Solve(whole * step / 25, 1e-11);
            double[] now = Saturation(solver, problem);
            for (int cell = 0; cell < now.Length; cell++) now[cell].ShouldBeGreaterThanOrEqualTo(before[cell] - 1e-7, $"cell {cell}, step {step}");
            before = now;
        }

        for (int cell = 0; cell < before.Length; cell++)
            if (problem.Capacity[cell] > 0) before[cell].ShouldBe(1, 1e-6);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(100)]
    public void Solve_RowOfCells_FillsCellByCellAsAddedUpByHand(int cells)
    {
        LatticeOperator matrix = new(cells, 1);
        double[] capacity = new double[cells], supply = new double[cells];
        for (int cell = 0; cell < cells; cell++)
        {
            capacity[cell] = 1;
            if (cell + 1 < cells) matrix.East[cell] = 1;
        }

        matrix.Anchor[0] = supply[0] = 2;
        ObstacleSolver solver = new(matrix, capacity, supply);

        // Cell k is full after (1 + 2 + … + k) less half a cell each: k²/2 (derived).
        for (int full = 1; full <= cells; full++)
        {
            solver.Solve(full * full / 2.0, 1e-12);
            double[] share = new double[cells];
            solver.CopySaturation(share);
            for (int cell = 0; cell < cells; cell++) share[cell].ShouldBe(cell < full ? 1 : 0, 1e-9);
        }
    }

    [Fact]
    public void SolvePressure_HalfFilledRow_FallsEvenlyFromTheFeedToTheFront()
    {
        LatticeOperator matrix = new(10, 1);
        double[] capacity = new double[10], supply = new double[10];
        for (int cell = 0; cell < 10; cell++)
        {
            capacity[cell] = 1;
            if (cell < 9) matrix.East[cell] = 1;
        }

        matrix.Anchor[0] = supply[0] = 2;
        ObstacleSolver solver = new(matrix, capacity, supply);
        solver.Solve(5 * 5 / 2.0 + 1, 1e-12);
        solver.SolvePressure(1e-12).Reason.ShouldBe(StopReason.Converged);
        double[] pressure = new double[10];
        solver.CopyPressure(pressure);

        // Half a cell of resistance to the feed, a whole one between middles; the front stands in the sixth cell.
        for (int cell = 0; cell < 5; cell++) pressure[cell].ShouldBe(1 - (cell + 0.5) / 5.5, 1e-9);
        for (int cell = 5; cell < 10; cell++) pressure[cell].ShouldBe(0);
    }

    [Fact]
    public void Constructor_SupplyThatTakesBack_IsRefused()
    {
        RandomMatrix problem = new(5, 5, 0, 21, holes: 0);
        problem.Supply[3] = -1e-13;
        Should.Throw<ArgumentOutOfRangeException>(() => new ObstacleSolver(problem.Operator, problem.Capacity, problem.Supply)).ParamName.ShouldBe("supply");
    }

    [Theory]
    [InlineData(-1e-13)]
    [InlineData(double.NaN)]
    public void Constructor_ConductanceBelowZeroOrNotANumber_IsRefused(double conductance)
    {
        RandomMatrix problem = new(5, 5, 0, 21, holes: 0);
        problem.Operator.East[7] = conductance;
        Should.Throw<ArgumentOutOfRangeException>(() => new ObstacleSolver(problem.Operator, problem.Capacity, problem.Supply)).ParamName.ShouldBe("matrix");
    }

    [Fact]
    public void Solve_Cancelled_StopsAtOnce()
    {
        RandomMatrix problem = new(40, 40, 1, 404);
        ObstacleSolver solver = new(problem.Operator, problem.Capacity, problem.Supply);
        Should.Throw<OperationCanceledException>(() => solver.Solve(FillClock(problem), 1e-10, new CancellationToken(canceled: true)));
    }

    private static double FillClock(RandomMatrix problem)
    {
        double[] consumed = new double[problem.Capacity.Length];
        new SteadySolver(problem.Operator, problem.TakesPart).Solve(problem.Capacity, consumed, 1e-12);
        return consumed.Max();
    }

    private static double[] Accumulated(ObstacleSolver solver, RandomMatrix problem)
    {
        double[] w = new double[problem.Capacity.Length];
        solver.CopyAccumulatedPressure(w);
        return w;
    }

    private static double[] Saturation(ObstacleSolver solver, RandomMatrix problem)
    {
        double[] share = new double[problem.Capacity.Length];
        solver.CopySaturation(share);
        return share;
    }

    private static double[] Offered(RandomMatrix problem, double[] w, double clock)
    {
        LatticeOperator matrix = problem.Operator;
        double[] offered = new double[w.Length];
        for (int cell = 0; cell < w.Length; cell++)
        {
            double flow = problem.Supply[cell] * clock - matrix.Anchor[cell] * w[cell];
            if (matrix.East[cell] > 0) flow += matrix.East[cell] * (w[cell + 1] - w[cell]);
            if (cell % matrix.Columns > 0) flow += matrix.East[cell - 1] * (w[cell - 1] - w[cell]);
            if (matrix.North[cell] > 0) flow += matrix.North[cell] * (w[cell + matrix.Columns] - w[cell]);
            if (cell >= matrix.Columns) flow += matrix.North[cell - matrix.Columns] * (w[cell - matrix.Columns] - w[cell]);
            offered[cell] = problem.TakesPart[cell] ? flow : 0;
        }

        return offered;
    }
}

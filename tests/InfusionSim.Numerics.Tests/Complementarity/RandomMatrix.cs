using InfusionSim.Numerics.Stencils;
using MathNet.Numerics.LinearAlgebra;

namespace InfusionSim.Numerics.Tests.Complementarity;

/// <summary>Random conductances on a small grid with holes, and the same as a dense matrix.</summary>
internal sealed class RandomMatrix
{
    public RandomMatrix(int columns, int rows, double spread, int seed, double holes = 0.1)
    {
        Random random = new(seed);
        Operator = new LatticeOperator(columns, rows);
        Capacity = new double[columns * rows];
        Supply = new double[columns * rows];
        TakesPart = new bool[columns * rows];
        for (int cell = 0; cell < Capacity.Length; cell++) TakesPart[cell] = random.NextDouble() >= holes;
        for (int cell = 0; cell < Capacity.Length; cell++)
        {
            if (!TakesPart[cell]) continue;
            Capacity[cell] = 1e-9 * (0.5 + random.NextDouble());
            if ((cell + 1) % columns != 0 && TakesPart[cell + 1]) Operator.East[cell] = 1e-13 * Lognormal(random, spread);
            if (cell + columns < Capacity.Length && TakesPart[cell + columns]) Operator.North[cell] = 1e-13 * Lognormal(random, spread);
        }

        for (int row = 0; row < rows; row++)
        {
            int cell = row * columns;
            if (!TakesPart[cell]) continue;
            Operator.Anchor[cell] = 2e-13;
            Supply[cell] = 2e-13;
        }

        KeepReached();
    }

    public LatticeOperator Operator { get; }

    public double[] Capacity { get; }

    public double[] Supply { get; }

    public bool[] TakesPart { get; }

    public Matrix<double> Dense()
    {
        int n = Capacity.Length, columns = Operator.Columns;
        Matrix<double> dense = Matrix<double>.Build.Dense(n, n);
        for (int cell = 0; cell < n; cell++)
        {
            dense[cell, cell] = TakesPart[cell] ? Operator.DiagonalOf(cell) : 1e-13;
            if (Operator.East[cell] > 0) dense[cell, cell + 1] = dense[cell + 1, cell] = -Operator.East[cell];
            if (Operator.North[cell] > 0) dense[cell, cell + columns] = dense[cell + columns, cell] = -Operator.North[cell];
        }

        return dense;
    }

    private static double Lognormal(Random random, double spread) =>
        Math.Exp(spread * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble()));

    private void KeepReached()
    {
        int columns = Operator.Columns;
        bool[] reached = new bool[Capacity.Length];
        Stack<int> open = new(Enumerable.Range(0, Capacity.Length).Where(cell => Supply[cell] > 0));
        while (open.TryPop(out int cell))
        {
            if (reached[cell]) continue;
            reached[cell] = true;
            if (Operator.East[cell] > 0) open.Push(cell + 1);
            if (cell % columns > 0 && Operator.East[cell - 1] > 0) open.Push(cell - 1);
            if (Operator.North[cell] > 0) open.Push(cell + columns);
            if (cell >= columns && Operator.North[cell - columns] > 0) open.Push(cell - columns);
        }

        for (int cell = 0; cell < Capacity.Length; cell++)
        {
            if (reached[cell]) continue;
            TakesPart[cell] = false;
            Capacity[cell] = 0;
        }
    }
}

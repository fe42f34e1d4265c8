using System.Diagnostics;
using InfusionSim.Numerics.Complementarity;
using InfusionSim.Numerics.Krylov;
using InfusionSim.Numerics.Lattice;
using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Benchmarks.Solving;

/// <summary>
/// Steady pressure of a square, from zero to a residual of 1e-8 of what is fed, for cloth that makes it hard: cycles, and time against even cloth in
/// the same run.
/// </summary>
internal static class LinearRatios
{
    private const int Across = 512;
    private const double Tolerance = 1e-8;
    private const int Repeats = 3;
    private const double Contrast = 1e6;

    /// <summary>Prints the table.</summary>
    /// <param name="output">Where to.</param>
    public static void Print(TextWriter output)
    {
        output.WriteLine($"Steady pressure of {Across}² cells between a fed and an open edge, residual {Tolerance:G1} of the supply, one core");
        double even = Row(output, "even cloth", Cloth(1, 0), 0);
        Row(output, "10:1 at 0°", Cloth(10, 0), even);
        Row(output, "10:1 at 90°", Cloth(10, 90), even);
        Row(output, "10:1 at 30°", Cloth(10, 30), even);
        Row(output, "100:1 at 0°", Cloth(100, 0), even);
        Row(output, "100:1 at 30°", Cloth(100, 30), even);
        Row(output, "4:1 at 45°", Cloth(4, 45), even);
        Row(output, "contrast 1e-6, islands", Islands(1 / Contrast), even);
        Row(output, "contrast 1e6, islands", Islands(Contrast), even);
        Row(output, "contrast 1e6, two channels one cell wide", Channels(), even);
    }

    private static double Row(TextWriter output, string name, LatticeOperator matrix, double even)
    {
        bool[] takesPart = [.. Enumerable.Repeat(true, matrix.NodeCount)];
        double[] supply = new double[matrix.NodeCount], pressure = new double[matrix.NodeCount], seconds = new double[Repeats];
        for (int row = 0; row < Across; row++) supply[row * Across] = matrix.Anchor[row * Across];
        SolveReport report = default;
        for (int repeat = 0; repeat < Repeats; repeat++)
        {
            SteadySolver solver = new(matrix, takesPart);
            Stopwatch watch = Stopwatch.StartNew();
            report = solver.Solve(supply, pressure, Tolerance);
            seconds[repeat] = watch.Elapsed.TotalSeconds;
        }

        Array.Sort(seconds);
        double median = seconds[Repeats / 2];
        output.WriteLine(
            $"{name,-42} {report.Cycles,3} cycles  {median * 1e9 / matrix.NodeCount,6:F0} ns per cell  residual {report.Imbalance:E0}"
            + (even > 0 ? $"  {median / even:F2} × even cloth" : ""));
        return median;
    }

    private static LatticeOperator Cloth(double ratio, double degrees)
    {
        LatticeOperator matrix = new(Across, Across);
        foreach (LatticeArm arm in SellingStencil.Of(PlaneTensor.Of(ratio, 1, degrees * Math.PI / 180)).Arms)
        {
            double[] conductance = matrix.Way(arm.Right, arm.Up).Conductance;
            for (int cell = 0; cell < conductance.Length; cell++)
            {
                int column = cell % Across + arm.Right, row = cell / Across + arm.Up;
                if (column >= 0 && column < Across && row < Across) conductance[cell] = arm.Weight;
            }
        }

        for (int row = 0; row < Across; row++) matrix.Anchor[row * Across] = matrix.Anchor[row * Across + Across - 1] = 2;
        return matrix;
    }

    private static LatticeOperator Islands(double contrast)
    {
        LatticeOperator matrix = Cloth(1, 0);
        for (int cell = 0; cell < matrix.CellCount; cell++)
        {
            double x = cell % Across / (double)Across, y = cell / Across / (double)Across;
            bool round = (x - 0.25) * (x - 0.25) + (y - 0.6) * (y - 0.6) < 0.0244, square = x > 0.59 && x < 0.82 && y > 0.2 && y < 0.47;
            if (!round && !square) continue;
            matrix.East[cell] *= contrast;
            matrix.North[cell] *= contrast;
        }

        return matrix;
    }

    private static LatticeOperator Channels()
    {
        LatticeOperator matrix = Cloth(1, 0);
        for (int along = 60; along < 400; along++)
        {
            matrix.North[along * Across + 200] *= Contrast;
            matrix.East[333 * Across + along] *= Contrast;
        }

        return matrix;
    }
}

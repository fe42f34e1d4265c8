namespace InfusionSim.Numerics.Integration;

/// <summary>One step of the embedded Runge–Kutta pair of orders 5 and 4.</summary>
/// <remarks>Source: Dormand and Prince, J. Comput. Appl. Math. 6 (1980) 19–26, table 2 (coefficients from memory; the order is held by tests).</remarks>
internal sealed class DormandPrince
{
    private const int Stages = 7;

    private static readonly double[] Nodes = [0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1];

    private static readonly double[][] Weights =
    [
        [],
        [1.0 / 5],
        [3.0 / 40, 9.0 / 40],
        [44.0 / 45, -56.0 / 15, 32.0 / 9],
        [19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729],
        [9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656],
        [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84],
    ];

    // Weights of order 5 less those of order 4.
    private static readonly double[] ErrorWeights = [71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40];

    private readonly Slope slope;

    private readonly double[][] rates;

    private readonly double[] inside;

    /// <summary>Makes room for the steps of a system.</summary>
    /// <param name="slope">Its right side.</param>
    /// <param name="unknowns">How many unknowns it has.</param>
    public DormandPrince(Slope slope, int unknowns)
    {
        this.slope = slope;
        rates = [.. Enumerable.Range(0, Stages).Select(_ => new double[unknowns])];
        inside = new double[unknowns];
    }

    /// <summary>Takes a step.</summary>
    /// <param name="time">Start of the step [-].</param>
    /// <param name="state">Unknowns there.</param>
    /// <param name="step">Its length [-].</param>
    /// <param name="after">Takes the unknowns at its end, of order 5.</param>
    /// <param name="error">Takes how far order 4 lies from them; may be empty.</param>
    public void Step(double time, ReadOnlySpan<double> state, double step, Span<double> after, Span<double> error)
    {
        slope(time, state, rates[0]);
        for (int stage = 1; stage < Stages; stage++)
        {
            for (int k = 0; k < state.Length; k++)
            {
                double sum = 0;
                for (int j = 0; j < stage; j++) sum += Weights[stage][j] * rates[j][k];
                inside[k] = state[k] + step * sum;
            }

            if (stage < Stages - 1) slope(time + Nodes[stage] * step, inside, rates[stage]);
        }

        // The last row of the table is the step itself; its rate serves the error alone.
        inside.CopyTo(after);
        if (error.IsEmpty) return;
        slope(time + step, inside, rates[^1]);
        for (int k = 0; k < state.Length; k++)
        {
            double sum = 0;
            for (int j = 0; j < Stages; j++) sum += ErrorWeights[j] * rates[j][k];
            error[k] = step * sum;
        }
    }
}

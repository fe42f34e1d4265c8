namespace InfusionSim.Plots.Contours;

/// <summary>Chooses the round numbers that lines are drawn at where a quantity runs over powers of ten.</summary>
internal static class RoundNumbers
{
    private const int Fewest = 3;

    private static readonly double[][] Steps = [[1, 2, 5], [1, 1.5, 2, 3, 4, 5, 7]];

    /// <summary>Numbers like 1, 2, 5, 10 strictly between two; closer ones where there would be fewer than three.</summary>
    /// <param name="low">Smallest value, above 0.</param>
    /// <param name="high">Largest value.</param>
    /// <returns>Numbers in order.</returns>
    internal static double[] Between(double low, double high)
    {
        if (!(low > 0) || !(high > low) || !double.IsFinite(high))
        {
            return [];
        }

        var coarse = Choose(Steps[0], low, high);
        return coarse.Length >= Fewest ? coarse : Choose(Steps[1], low, high);
    }

    private static double[] Choose(double[] steps, double low, double high) =>
    [
        .. from power in Enumerable.Range((int)Math.Floor(Math.Log10(low)), (int)Math.Ceiling(Math.Log10(high / low)) + 2)
           from step in steps
           let value = double.Parse($"{step}e{power}", System.Globalization.CultureInfo.InvariantCulture)
           where value > low * 1.02 && value < high * 0.98
           select value,
    ];
}

namespace InfusionSim.Plots.Contours;

/// <summary>Chooses the round pressures that isobars are drawn at.</summary>
internal static class RoundPressures
{
    private static readonly double[] Steps = [1, 2, 5, 10, 20, 50, 100, 200, 500];

    /// <summary>Round pressures between two, four to ten of them.</summary>
    /// <param name="low">Lowest pressure, absolute [mbar].</param>
    /// <param name="high">Highest pressure, absolute [mbar].</param>
    /// <returns>Pressures in order, strictly between the two [mbar].</returns>
    internal static double[] Between(double low, double high)
    {
        if (!(high > low))
        {
            return [];
        }

        var step = Steps.LastOrDefault(candidate => (high - low) / candidate >= 4.5, (high - low) / 5);
        var first = Math.Floor(low / step) + 1;
        return [.. Enumerable.Range(0, 12).Select(i => (first + i) * step).Where(value => value < high - step * 0.05)];
    }
}

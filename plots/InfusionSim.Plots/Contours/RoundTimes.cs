namespace InfusionSim.Plots.Contours;

/// <summary>Chooses the round times that isochrones are drawn at.</summary>
internal static class RoundTimes
{
    private const int Fewest = 5;

    // A line this close to the end would carry the end's own number.
    private const double LatestShare = 0.97;

    private static readonly double[] Steps =
    [
        .. new[] { 0.1, 0.2, 0.3, 0.5, 1.0, 2, 3, 5, 10, 15, 20, 30 },
        .. new[] { 1.0, 2, 3, 5, 10, 15, 20, 30 }.Select(minutes => minutes * 60),
        .. new[] { 1.0, 2, 3, 4, 6, 12, 24 }.Select(hours => hours * 3600),
    ];

    /// <summary>The longest round step that leaves at least five times before the end; no step is more than twice the one before, so there are never more than nine.</summary>
    /// <param name="end">When the last place is full [s].</param>
    /// <returns>Times in order, the end not among them [s].</returns>
    internal static double[] Before(double end)
    {
        if (!(end > 0) || !double.IsFinite(end))
        {
            return [];
        }

        var step = Steps.LastOrDefault(candidate => Count(candidate, end) >= Fewest, end / (Fewest + 1));
        return [.. Enumerable.Range(1, Count(step, end)).Select(i => i * step)];
    }

    private static int Count(double step, double end) => (int)Math.Ceiling(LatestShare * end / step - 1e-6) - 1;
}

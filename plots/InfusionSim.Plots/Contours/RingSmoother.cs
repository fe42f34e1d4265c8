namespace InfusionSim.Plots.Contours;

/// <summary>Takes the steps of the squares out of a ring that was traced around whole squares.</summary>
internal static class RingSmoother
{
    private const int MostPasses = 10;
    private const int PointsPerPass = 8;

    /// <summary>A ring whose points are drawn towards the middle of their neighbours; a ring around few squares is left as it is.</summary>
    internal static List<Spot> Smooth(List<Spot> ring)
    {
        var passes = Math.Min(MostPasses, ring.Count / PointsPerPass - 1);
        for (var pass = 0; pass < passes; pass++)
        {
            var before = ring;
            ring = [.. before.Select((spot, i) => Mix(before[(i + before.Count - 1) % before.Count], spot, before[(i + 1) % before.Count]))];
        }

        return ring;
    }

    private static Spot Mix(Spot previous, Spot spot, Spot next) =>
        new((previous.XMm + 2 * spot.XMm + next.XMm) / 4, (previous.YMm + 2 * spot.YMm + next.YMm) / 4);
}

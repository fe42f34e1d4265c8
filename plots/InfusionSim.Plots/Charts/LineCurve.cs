using InfusionSim.Plots.Contours;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Charts;

/// <summary>How much of its pressure, of a vent line its vacuum, a line still has along its way.</summary>
/// <param name="Name">Name of the feed or vent.</param>
/// <param name="IsVent">Whether it is a vent.</param>
/// <param name="HasHose">Whether a hose joins it.</param>
/// <param name="DistancesMm">Way from the line's first point, in order [mm].</param>
/// <param name="Shares">Share of what the line has at its start, at each place [-].</param>
/// <param name="StartMm">Where its hose joins, else its first point [mm].</param>
/// <param name="StartShare">What it has there, as a share of the whole difference between air and bag [-].</param>
internal sealed record LineCurve(string Name, bool IsVent, bool HasHose, double[] DistancesMm, double[] Shares, double StartMm, double StartShare)
{
    /// <summary>The end where less is left, as a place in the lists [-].</summary>
    internal int FarEnd => Shares[0] < Shares[^1] ? 0 : Shares.Length - 1;

    /// <summary>What is left at the far end, as a share of the start [-].</summary>
    internal double EndShare => Shares[FarEnd];

    /// <summary>The line in words.</summary>
    internal string Text => $"{(IsVent ? "vent" : "feed")} {Name}";

    /// <summary>The lines of a forecast that lose pressure: those with a bore or a hose, the feeds first.</summary>
    internal static IReadOnlyList<LineCurve> Of(InfusionPlan plan, FillForecast forecast)
    {
        var curves = new List<LineCurve>();
        foreach (var (feed, told) in plan.Feeds.Zip(forecast.Feeds))
        {
            Add(curves, feed.Name, false, feed.Path, feed.Hose, told.Line);
        }

        foreach (var (vent, told) in plan.Vents.Zip(forecast.Vents))
        {
            Add(curves, vent.Name, true, vent.Path, vent.Hose, told.Line);
        }

        return curves;
    }

    private static void Add(List<LineCurve> curves, string name, bool isVent, Protocol.V1.Path path, Hose? hose, LineForecast? line)
    {
        if (line is not { Points.Count: > 0 })
        {
            return;
        }

        double[] distances = [.. line.Points.Select(point => 1000 * point.DistanceM)];
        double[] held = [.. line.Points.Select(point => isVent ? 1 - point.PressureRatio : point.PressureRatio)];
        var start = hose?.JoinsAt is { } joint ? WayTo(ClothArea.Read(joint), [.. path.Points.Select(ClothArea.Read)]) : 0;
        var atStart = Between(distances, held, start);
        if (atStart > 0)
        {
            curves.Add(new LineCurve(name, isVent, hose is not null, distances, [.. held.Select(share => share / atStart)], start, atStart));
        }
    }

    private static double Between(double[] distances, double[] values, double at)
    {
        var after = Array.FindIndex(distances, distance => distance >= at);
        if (after <= 0 || distances[after] <= distances[after - 1])
        {
            return after < 0 ? values[^1] : values[after];
        }

        var share = (at - distances[after - 1]) / (distances[after] - distances[after - 1]);
        return values[after - 1] + share * (values[after] - values[after - 1]);
    }

    // Way along the path to its place nearest to a point.
    private static double WayTo(Spot joint, Spot[] path)
    {
        var (way, best, nearest) = (0.0, 0.0, double.PositiveInfinity);
        for (var i = 0; i + 1 < path.Length; i++)
        {
            var (dx, dy) = (path[i + 1].XMm - path[i].XMm, path[i + 1].YMm - path[i].YMm);
            var length = Math.Sqrt(dx * dx + dy * dy);
            var along = length > 0 ? Math.Clamp(((joint.XMm - path[i].XMm) * dx + (joint.YMm - path[i].YMm) * dy) / length, 0, length) : 0;
            var (x, y) = (path[i].XMm + along * dx / Math.Max(length, 1e-9), path[i].YMm + along * dy / Math.Max(length, 1e-9));
            var off = Math.Sqrt(Math.Pow(joint.XMm - x, 2) + Math.Pow(joint.YMm - y, 2));
            (best, nearest) = off < nearest ? (way + along, off) : (best, nearest);
            way += length;
        }

        return best;
    }
}

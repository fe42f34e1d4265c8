using InfusionSim.Numerics.Geometry;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The sentence about a vent that resin reaches while much of the cloth is still dry.</summary>
internal static class EarlyVentWords
{
    /// <summary>Widths of a square within which a place counts as lying on a line [-].</summary>
    private const double Near = 3;

    /// <summary>When it is wet, what that costs, and what to do about it.</summary>
    public static string Of(Finding finding, FillForecast forecast, InfusionPlan plan, string line)
    {
        VentForecast? vent = forecast.Vents.FirstOrDefault(candidate => candidate.Name == finding.Line);
        string when = finding.HasTimeS ? $" at {Amounts.Time(finding.TimeS)}" : "";
        string filled = vent is { HasFilledFractionAtArrival: true } ? $" with {Amounts.Percent(vent.FilledFractionAtArrival)} of the cloth full" : "";
        string lost = vent is { ResinOutG: >= 0.05 } ? $"; {Amounts.Weight(vent.ResinOutG)} leave through it by the end" : "";
        return $"Resin is in {line}{when}{filled}{lost}. {Advice(plan.Vents.FirstOrDefault(candidate => candidate.Name == finding.Line), forecast, plan)}";
    }

    // A vent that already lies where the cloth fills last cannot be moved there.
    private static string Advice(Vent? vent, FillForecast forecast, InfusionPlan plan)
    {
        if (vent is null || forecast.LastToFill is not Point last || !LiesOn(last, vent, plan)) return "Move it to where the cloth fills last.";
        string end = forecast.Lag is Lag lag ? SideWords.Advice(lag) : "";
        bool isMeshTooLong = forecast.Lag is { HasMeshToVentMm: true } && end.Length > 0 && !end.EndsWith("far enough", StringComparison.Ordinal);
        if (isMeshTooLong) return "It lies where the cloth fills last; the mesh carries the resin there too soon.";
        return vent.Path.Points.Count > 1
            ? $"It is longer than the place that fills last: keep only the part round {PlaceWords.Of(last, plan)}, or shut it when it is wet."
            : "It lies where the cloth fills last; shut it when it is wet, or throttle it.";
    }

    private static bool LiesOn(Point place, Vent vent, InfusionPlan plan)
    {
        if (vent.Path is not { Points.Count: > 0 } path) return false;
        Point2 at = new(place.XMm, place.YMm);
        Point2[] points = [.. path.Points.Select(point => new Point2(point.XMm, point.YMm))];
        double reach = Math.Max(Near * (plan.Resolution?.CellMm ?? 0), vent.ContactWidthMm);
        return points.Zip(points.Length > 1 ? points.Skip(1) : points).Any(piece => PathDistance.NearestOn(piece.First, piece.Second, at).DistanceTo(at) <= reach);
    }
}

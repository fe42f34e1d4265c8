using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about air: what stays dry or is never reached, where, and since when it is cut off.</summary>
internal static class AirWords
{
    /// <summary>What the line says.</summary>
    public static string Text(FillForecast forecast, InfusionPlan plan)
    {
        double goal = plan.Goals is { HasLargestDrySpotMm2: true } goals ? goals.LargestDrySpotMm2 : PlanDefaults.LargestDrySpotMm2;
        if (plan.Vents.Count == 0) return "all of it stays: there is no vent";
        string[] dry = [.. NotWetted(forecast, plan)];
        if (dry.Length > 0 && forecast.DrySpots.All(spot => spot.AreaMm2 <= goal)) return string.Join("; ", dry);
        return string.Join("; ", [.. dry, Spots(forecast, plan, goal)]);
    }

    private static IEnumerable<string> NotWetted(FillForecast forecast, InfusionPlan plan)
    {
        if (forecast.Outcome == Outcome.GelsFirst) yield return $"{Amounts.Percent(1 - forecast.FilledFraction)} of the cloth still dry when it gels";
        if (forecast.Outcome == Outcome.PotRunsDry) yield return $"{Amounts.Percent(1 - forecast.FilledFraction)} of the cloth still dry when the pot is empty";
        if (forecast.Findings.FirstOrDefault(finding => finding.Kind == FindingKind.StopsShort) is not Finding unreached) yield break;
        string area = unreached.HasAmount ? Amounts.Area(unreached.Amount) : "part of the cloth";
        string place = unreached.At is Point at ? $": {PlaceWords.Of(at, plan)}" : "";
        yield return $"{area} never reached by the resin{place}";
    }

    private static string Spots(FillForecast forecast, InfusionPlan plan, double goal)
    {
        DrySpot[] spots = [.. forecast.DrySpots.OrderByDescending(spot => spot.AreaMm2)];
        if (spots.Length == 0) return $"no dry spot above {Amounts.Area(goal)}";
        DrySpot largest = spots[0];
        string place = PlaceWords.Of(largest.At, plan);
        if (largest.AreaMm2 <= goal) return $"no dry spot above {Amounts.Area(goal)} (the largest: {Amounts.Area(largest.AreaMm2)}, {place})";
        string text = $"dry spot of {Amounts.Area(largest.AreaMm2)}: {place}; cut off from every vent at {Amounts.Time(largest.SealedTimeS)}";
        return spots.Length == 1 ? text : $"{text}; {spots.Length} dry spots in all, {Amounts.Area(spots.Sum(spot => spot.AreaMm2))}";
    }
}

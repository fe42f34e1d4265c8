using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about air: what stays dry, where, and since when it is cut off.</summary>
internal static class AirWords
{
    /// <summary>What the line says.</summary>
    public static string Text(FillForecast forecast, InfusionPlan plan)
    {
        double goal = plan.Goals is { HasLargestDrySpotMm2: true } goals ? goals.LargestDrySpotMm2 : PlanDefaults.LargestDrySpotMm2;
        if (plan.Vents.Count == 0) return "all of it stays: there is no vent";
        DrySpot[] spots = [.. forecast.DrySpots.OrderByDescending(spot => spot.AreaMm2)];
        if (spots.Length == 0) return $"no dry spot above {Amounts.Area(goal)}";
        DrySpot largest = spots[0];
        string place = PlaceWords.Of(largest.At, plan);
        if (largest.AreaMm2 <= goal) return $"no dry spot above {Amounts.Area(goal)} (the largest: {Amounts.Area(largest.AreaMm2)}, {place})";
        string text = $"dry spot of {Amounts.Area(largest.AreaMm2)}: {place}; cut off from every vent at {Amounts.Time(largest.SealedTimeS)}";
        return spots.Length == 1 ? text : $"{text}; {spots.Length} dry spots in all, {Amounts.Area(spots.Sum(spot => spot.AreaMm2))}";
    }
}

using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The first line: how it ends, when, and in what range.</summary>
public static class OutcomeWords
{
    /// <summary>The outcome in capitals, as on a screen.</summary>
    public static string LabelOf(Outcome outcome) => outcome switch
    {
        Outcome.Fills => "FILLS",
        Outcome.TrapsAir => "TRAPS AIR",
        Outcome.StopsShort => "STOPS SHORT",
        Outcome.PotRunsDry => "POT RUNS DRY",
        Outcome.GelsFirst => "GELS FIRST",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No such outcome."),
    };

    /// <summary>The first line.</summary>
    public static FillLine Line(FillForecast forecast, InfusionPlan plan) => new(LabelOf(forecast.Outcome), forecast.Outcome switch
    {
        Outcome.GelsFirst => $"solid {Amounts.Time(forecast.EndTimeS)} after opening with {Amounts.Percent(forecast.FilledFraction)} of the cloth full{FastCase(forecast)}",
        Outcome.TrapsAir when plan.Vents.Count == 0 && LeakWords.DrivesResinOut(forecast) => $"there is no vent, and {LeakWords.Pace(forecast)}: it drives the resin out again",
        Outcome.TrapsAir when plan.Vents.Count == 0 => "there is no vent: all the air under the bag stays in the cloth",
        Outcome.TrapsAir => $"comes to rest {Amounts.Time(forecast.EndTimeS)} after opening{Band(forecast)}, {LargestSpot(forecast, plan)}",
        Outcome.StopsShort when forecast.HasHeightReachedMm =>
            $"climbs {Amounts.Length(forecast.HeightReachedMm)} and comes to rest {Amounts.Time(forecast.EndTimeS)} after opening with {Amounts.Percent(forecast.FilledFraction)} of the cloth full",
        Outcome.StopsShort when ClampWords.AllFeedsShut(forecast, plan) =>
            $"every feed is shut by {ClampWords.WhenAllFeedsShut(forecast, plan)}; comes to rest with {Amounts.Percent(forecast.FilledFraction)} of the cloth full",
        Outcome.PotRunsDry => $"a pot is empty {Amounts.Time(forecast.EndTimeS)} after opening with {Amounts.Percent(forecast.FilledFraction)} of the cloth full",
        Outcome.StopsShort => $"comes to rest {Amounts.Time(forecast.EndTimeS)} after opening with {Amounts.Percent(forecast.FilledFraction)} of the cloth full",
        _ => $"full {Amounts.Time(forecast.FillTimeS)} after opening{Band(forecast)}",
    });

    private static string Band(FillForecast forecast)
    {
        if (forecast.Likely is not { HasFillTimeFromS: true } band) return "";
        if (!band.HasFillTimeToS) return $" (two shots in three: from {Amounts.Time(band.FillTimeFromS)} to gelling first)";
        return band.FillTimeFromS == band.FillTimeToS ? "" : $" (two shots in three: {Amounts.TimeRange(band.FillTimeFromS, band.FillTimeToS)})";
    }

    private static string FastCase(FillForecast forecast)
    {
        if (forecast.Likely is { HasFillTimeFromS: true } band) return $" (in the fast case full at {Amounts.Time(band.FillTimeFromS)})";
        // Where a place is never reached there is no fill time in any case, and its absence says nothing about gel.
        return forecast.Findings.Any(static finding => finding.Kind == FindingKind.StopsShort) ? "" : ", in the fast case too";
    }

    private static string LargestSpot(FillForecast forecast, InfusionPlan plan)
    {
        DrySpot? largest = forecast.DrySpots.MaxBy(spot => spot.AreaMm2);
        return largest is null
            ? $"{Amounts.Percent(forecast.FilledFraction)} of the cloth full"
            : $"{Amounts.Area(largest.AreaMm2)} stay dry: {PlaceWords.Of(largest.At, plan)}";
    }
}

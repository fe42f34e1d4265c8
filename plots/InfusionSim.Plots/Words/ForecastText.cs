using InfusionSim.Plots.Contours;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Words;

/// <summary>A forecast in words, as pictures carry it.</summary>
internal static class ForecastText
{
    /// <summary>The outcome in one or two words for the badge.</summary>
    internal static string Badge(Outcome outcome) => outcome switch
    {
        Outcome.Fills => "FILLS",
        Outcome.TrapsAir => "TRAPS AIR",
        Outcome.StopsShort => "STOPS SHORT",
        Outcome.PotRunsDry => "POT RUNS DRY",
        Outcome.GelsFirst => "GELS FIRST",
        _ => "NO FORECAST",
    };

    /// <summary>Outcome, fill time with its likely band, gel time and last place in one sentence.</summary>
    internal static string Sentence(InfusionPlan plan, FillForecast forecast)
    {
        var cloth = new ClothArea(plan);
        var parts = new List<string> { Start(forecast, cloth) };
        var gel = $"the resin gels at {TimeText.Of(forecast.GelTimeS)}";
        if (forecast.HasSpareTimeS && forecast.SpareTimeS > 0)
        {
            gel += $", {TimeText.Of(forecast.SpareTimeS)} to spare";
        }

        if (forecast.Outcome != Outcome.GelsFirst)
        {
            parts.Add(gel);
        }

        if (forecast is { Outcome: Outcome.GelsFirst, Likely.HasFillTimeFromS: true })
        {
            parts.Add($"in the fast case it is full in {TimeText.Of(forecast.Likely.FillTimeFromS)}");
        }

        if (forecast.LastToFill is { } last && forecast.Outcome != Outcome.GelsFirst)
        {
            parts.Add($"last to fill is the {PlaceText.Of(ClothArea.Read(last), cloth)}");
        }

        return string.Join("; ", parts) + ".";
    }

    /// <summary>Fill time with its likely band: 30 min (two shots in three: 20 to 45 min).</summary>
    internal static string FillTime(FillForecast forecast)
    {
        var time = TimeText.Of(forecast.HasFillTimeS ? forecast.FillTimeS : forecast.EndTimeS);
        return forecast.Likely switch
        {
            { HasFillTimeFromS: true, HasFillTimeToS: true } band =>
                $"{time} (two shots in three: {TimeText.Range(band.FillTimeFromS, band.FillTimeToS)})",
            { HasFillTimeFromS: true } band => $"{time} (two shots in three: {TimeText.Of(band.FillTimeFromS)} to never, it gels first)",
            _ => time,
        };
    }

    /// <summary>Fill time with its band, or how far it gets, in a few words.</summary>
    internal static string Short(FillForecast forecast) => forecast switch
    {
        { HasFillTimeS: true, Outcome: Outcome.TrapsAir, DrySpots.Count: > 0 } => $"{AreaText.Of(forecast.DrySpots.Sum(spot => spot.AreaMm2))} dry; else full in {FillTime(forecast)}",
        { HasFillTimeS: true } => $"full in {FillTime(forecast)}",
        _ => $"{Share(forecast)} full at {TimeText.Of(forecast.EndTimeS)}",
    };

    private static string Start(FillForecast forecast, ClothArea cloth) => forecast.Outcome switch
    {
        Outcome.Fills => $"Fills in {FillTime(forecast)}",
        Outcome.TrapsAir => forecast.DrySpots.Count > 0
            ? $"Traps air: {DrySpots(forecast, cloth)}; full elsewhere in {FillTime(forecast)}"
            : $"Traps air; full elsewhere in {FillTime(forecast)}",
        Outcome.StopsShort => $"Stops short at {Share(forecast)} full, {TimeText.Of(forecast.EndTimeS)} after opening",
        Outcome.PotRunsDry => $"The pot runs dry at {Share(forecast)} full, {TimeText.Of(forecast.EndTimeS)} after opening",
        Outcome.GelsFirst => $"Gels first: the resin gels at {TimeText.Of(forecast.GelTimeS)} with the cloth {Share(forecast)} full",
        _ => "No forecast",
    };

    private static string DrySpots(FillForecast forecast, ClothArea cloth)
    {
        var largest = forecast.DrySpots[0];
        var where = PlaceText.Of(ClothArea.Read(largest.At), cloth);
        return forecast.DrySpots.Count == 1
            ? $"{AreaText.Of(largest.AreaMm2)} stay dry in the {where}"
            : $"{forecast.DrySpots.Count} places stay dry, the largest {AreaText.Of(largest.AreaMm2)} in the {where}";
    }

    private static string Share(FillForecast forecast) => ShareText.Of(forecast.FilledFraction);
}

using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Plots.Words;

/// <summary>A forecast in words, as pictures carry it: the wording of the answer itself, in one sentence.</summary>
internal static class ForecastText
{
    /// <summary>The outcome in one or two words for the badge.</summary>
    internal static string Badge(InfusionPlan plan, FillForecast forecast) => FillWords.Lines(plan, forecast)[0].Label;

    /// <summary>How it ends and when, with the likely band, in a few words.</summary>
    internal static string Short(InfusionPlan plan, FillForecast forecast) => FillWords.Lines(plan, forecast)[0].Text;

    /// <summary>Outcome with the likely band, gel time and last place in one sentence.</summary>
    internal static string Sentence(InfusionPlan plan, PredictFillResponse response)
    {
        var forecast = response.Forecast;
        var start = Short(plan, forecast);
        var parts = new List<string> { char.ToUpperInvariant(start[0]) + start[1..] };
        if (forecast.Outcome != Outcome.GelsFirst)
        {
            parts.Add($"gel at {Amounts.Time(forecast.GelTimeS)}" + (forecast.SpareTimeS > 0 ? $", {Amounts.Time(forecast.SpareTimeS)} to spare" : ""));
            if (forecast.LastToFill is not null)
            {
                parts.Add($"last to fill: {PlaceWords.OfLast(forecast, response.FrontMap, plan)}");
            }
        }

        parts.AddRange(ToolSide(plan, forecast));
        return string.Join("; ", parts) + ".";
    }

    /// <summary>How far the tool side stays behind; none for a panel of one layer.</summary>
    internal static IEnumerable<string> ToolSide(InfusionPlan plan, FillForecast forecast) =>
        FillWords.Lines(plan, forecast).Where(line => line.Label == "Tool").Select(line => line.Text);
}

using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The lines under the resin's: how warm and thick it is on the way, how far cured, and where that comes from.</summary>
internal static class CardWords
{
    /// <summary>The lines; none where the card holds no more than two plain numbers.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast, InfusionPlan plan)
    {
        if (forecast.Resin is not ResinForecast resin) yield break;
        bool changes = resin.HasViscosityAtEndPaS && Amounts.Viscosity(resin.ViscosityAtEndPaS) != Amounts.Viscosity(resin.ViscosityAtOpeningPaS);
        if (resin.HasTemperatureAtOpeningDegC || changes || resin.Basis.Count > 0 || plan.Resin.Name.Length > 0)
            yield return new("", $"{(plan.Resin.Name.Length > 0 ? plan.Resin.Name + ": " : "")}{Amounts.Viscosity(resin.ViscosityAtOpeningPaS)} at opening{(changes ? $", {Amounts.Viscosity(resin.ViscosityAtEndPaS)} {AtEnd(forecast)}" : "")}{Warmth(resin)}{Cure(resin, forecast)}");
        foreach (string sentence in resin.Basis) yield return new("", sentence);
    }

    private static string AtEnd(FillForecast forecast) => forecast.Outcome switch
    {
        Outcome.Fills => "when full",
        Outcome.GelsFirst => "just before gel",
        _ => "at the end",
    };

    private static string Warmth(ResinForecast resin)
    {
        if (!resin.HasTemperatureAtOpeningDegC) return "";
        string from = Amounts.Temperature(resin.TemperatureAtOpeningDegC), to = Amounts.Temperature(resin.TemperatureAtEndDegC);
        return from == to ? $"; {from}" : $"; {from} at opening, {to} at the end";
    }

    private static string Cure(ResinForecast resin, FillForecast forecast)
    {
        string cured = resin.HasConversionAtEnd ? $"; cured to {Amounts.Percent(resin.ConversionAtEnd)} {(forecast.Outcome == Outcome.GelsFirst ? "by then" : AtEnd(forecast))}" : "";
        return resin.HasHandlingTimeS ? $"{cured}, to be handled after {Amounts.Time(resin.HandlingTimeS)}" : cured;
    }
}

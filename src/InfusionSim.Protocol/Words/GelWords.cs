using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about gel: on the clock of the mixing cup, on that of the feed, and what is to spare.</summary>
internal static class GelWords
{
    /// <summary>What the line says.</summary>
    public static string Text(FillForecast forecast, InfusionPlan plan)
    {
        string clocks = $"{Amounts.Time(forecast.GelTimeS + 60 * plan.Resin.MixToOpenMin)} after mixing = {Amounts.Time(forecast.GelTimeS)} after opening";
        if (forecast.HasSpareTimeS) return $"{clocks}: {Amounts.Time(forecast.SpareTimeS)} to spare{SlowCase(forecast)}";
        if (!forecast.HasGelMarginRatio || forecast.GelMarginRatio <= 0 || forecast.GelMarginRatio >= 1) return clocks;
        if (Thickens(forecast)) return $"{clocks}: too early, the fill needs {Numbers.Figures(1 / forecast.GelMarginRatio, 2)} times the flow that comes before gel";
        double needed = forecast.GelTimeS / forecast.GelMarginRatio;
        return $"{clocks}: {Amounts.Time(needed - forecast.GelTimeS)} too early, the fill needs {Amounts.Time(needed)} ({Numbers.Figures(1 / forecast.GelMarginRatio, 2)} times as long)";
    }

    /// <summary>Whether the viscosity changes on the way, so that a share of the flow is no share of the time.</summary>
    public static bool Thickens(FillForecast forecast) =>
        forecast.Resin is ResinForecast resin && !(resin.HasViscosityAtEndPaS && Math.Abs(resin.ViscosityAtEndPaS / resin.ViscosityAtOpeningPaS - 1) < 0.01);

    private static string SlowCase(FillForecast forecast)
    {
        if (forecast.Likely is not LikelyBand band) return "";
        if (!band.HasFillTimeToS) return ", but in the slow case it gels first";
        return $", {Amounts.Time(Math.Max(0, forecast.GelTimeS - band.FillTimeToS))} in the slow case";
    }
}

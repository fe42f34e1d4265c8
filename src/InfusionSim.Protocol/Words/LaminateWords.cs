using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about the laminate itself: how thick it is and what it weighs, where the plan knows the weight of its fibre.</summary>
internal static class LaminateWords
{
    /// <summary>Zones that are told one by one [-]; of the rest only the number is.</summary>
    private const int MostTold = 4;

    /// <summary>One line a zone, and the whole where there are several.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast)
    {
        bool isOne = forecast.Laminates.Count == 1 && forecast.HasLaminateWeightG;
        for (int k = 0; k < Math.Min(MostTold, forecast.Laminates.Count); k++)
            yield return new FillLine(k == 0 ? "Part" : "", (isOne ? "" : forecast.Laminates[k].Zone + " ") + Text(forecast.Laminates[k]));
        if (forecast.Laminates.Count > MostTold) yield return new FillLine("", $"and {forecast.Laminates.Count - MostTold} more (--json lists all)");
        if (forecast.HasLaminateWeightG && forecast.Laminates.Count > 1) yield return new FillLine("", $"{Amounts.Weight(forecast.LaminateWeightG)} in all, flange included");
    }

    private static string Text(LaminateForecast laminate) =>
        $"{Numbers.Figures(laminate.ThicknessMm, 3)} mm thick, {Amounts.Weight(laminate.FibreGPerM2 + laminate.ResinGPerM2)} a square metre, "
        + $"{Amounts.Percent(laminate.FibreWeightFraction)} of it fibre; {Amounts.Weight(laminate.WeightG)} on {Amounts.Area(laminate.AreaMm2)}";
}

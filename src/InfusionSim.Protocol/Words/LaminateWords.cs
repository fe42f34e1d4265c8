using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about the laminate itself: how thick it is and what it weighs, where the plan knows the weight of its fibre.</summary>
internal static class LaminateWords
{
    /// <summary>Zones that are told one by one [-]; of the rest only the number is.</summary>
    private const int MostTold = 4;

    /// <summary>One line a zone, the whole where there are several, and what of the lay-up is not counted.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast, InfusionPlan plan)
    {
        bool isOne = forecast.Laminates.Count == 1 && forecast.HasLaminateWeightG;
        for (int k = 0; k < Math.Min(MostTold, forecast.Laminates.Count); k++)
            yield return new FillLine(k == 0 ? "Part" : "", (isOne ? "" : forecast.Laminates[k].Zone + " ") + Text(forecast.Laminates[k]));
        if (forecast.Laminates.Count > MostTold) yield return new FillLine("", $"and {forecast.Laminates.Count - MostTold} more (--json lists all)");
        if (forecast.HasLaminateWeightG && forecast.Laminates.Count > 1) yield return new FillLine("", $"{Amounts.Weight(forecast.LaminateWeightG)} in all, flange included");
        string[] left = forecast.Laminates.Count == 0 ? [] : [.. NotCounted(plan)];
        if (left.Length > 0) yield return new FillLine("", $"not counted: {string.Join("; ", left)}");
    }

    private static IEnumerable<string> NotCounted(InfusionPlan plan)
    {
        bool hasMesh = plan.FlowMeshes.Count > 0, hasPeelPly = plan.PeelPly is not null;
        if (plan.Cores.Count == 1) yield return "the core with its resin, of which a plan gives no weight";
        if (plan.Cores.Count > 1) yield return "the cores with their resin, of which a plan gives no weight";
        if (hasMesh && hasPeelPly) yield return "flow mesh and peel ply with their resin, which come off";
        else if (hasMesh) yield return "the flow mesh with its resin, which comes off";
        else if (hasPeelPly) yield return "the peel ply with its resin, which comes off";
    }

    private static string Text(LaminateForecast laminate) =>
        $"{Numbers.Figures(laminate.ThicknessMm, 3)} mm thick, {Amounts.Weight(laminate.FibreGPerM2 + laminate.ResinGPerM2)} a square metre, "
        + $"{Amounts.Percent(laminate.FibreWeightFraction)} of it fibre; {Amounts.Weight(laminate.WeightG)} on {Amounts.Area(laminate.AreaMm2)}";
}

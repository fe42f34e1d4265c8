using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about resin: what stays in the cloth, what comes off with the mesh, what is drawn off, what stands in hoses: together what to mix.</summary>
internal static class ResinWords
{
    /// <summary>Weight below which an amount is not told [g].</summary>
    private const double Nothing = 0.05;

    /// <summary>What the line says.</summary>
    public static string Text(FillForecast forecast, InfusionPlan plan)
    {
        double drawnOff = forecast.Vents.Sum(vent => vent.ResinOutG), inMesh = forecast.HasResinInMeshG ? forecast.ResinInMeshG : 0;
        double inHoses = forecast.Feeds.Sum(feed => feed.HasLineVolumeCm3 ? feed.LineVolumeCm3 : 0) * plan.Resin.DensityKgPerM3 / 1000;
        string[] parts =
        [
            $"{Amounts.Weight(forecast.ResinInPreformG)} in {InPart(plan)}",
            .. Part(inMesh, MeshName(plan)),
            .. Part(drawnOff, "out of the vents"),
        ];
        double through = forecast.ResinInPreformG + inMesh + drawnOff;
        string sum = parts.Length == 1 ? parts[0] : $"{string.Join(", ", parts)}: {Amounts.Weight(through)} through the feeds";
        return inHoses < Nothing ? sum : $"{sum}, {Amounts.Weight(inHoses)} stay in hoses and lines";
    }

    private static IEnumerable<string> Part(double grams, string where)
    {
        if (grams >= Nothing) yield return $"{Amounts.Weight(grams)} {where}";
    }

    private static string InPart(InfusionPlan plan) => (plan.Cores.Count > 0, plan.Gaps.Count > 0) switch
    {
        (true, true) => "cloth, core and gaps",
        (true, false) => "cloth and core",
        (false, true) => "cloth and gaps",
        _ => "the cloth",
    };

    /// <summary>What comes off the part, as the plan has it.</summary>
    internal static string MeshName(InfusionPlan plan) => (plan.FlowMeshes.Count > 0, plan.PeelPly is not null) switch
    {
        (true, true) => "in mesh and peel ply",
        (false, true) => "in the peel ply",
        _ => "in the mesh",
    };
}

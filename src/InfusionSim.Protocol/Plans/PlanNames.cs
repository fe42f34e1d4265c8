using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Names of lines, layers, pots, timing marks and zones: a word or letter and a number where the plan gives none.</summary>
public static class PlanNames
{
    /// <summary>Gives a name to everything that has none: F1, V1, G1, M1, Z1, Mesh1 and so on, leaving out names that are taken.</summary>
    /// <param name="plan">The plan; changed in place.</param>
    public static void FillIn(InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var lines = new HashSet<string>(plan.Feeds.Select(feed => feed.Name).Concat(plan.Vents.Select(vent => vent.Name)).Concat(plan.Gaps.Select(gap => gap.Name)), StringComparer.Ordinal);
        for (int k = 0; k < plan.Feeds.Count; k++)
            if (string.IsNullOrWhiteSpace(plan.Feeds[k].Name)) plan.Feeds[k].Name = NextFree("F", k + 1, lines);
        for (int k = 0; k < plan.Vents.Count; k++)
            if (string.IsNullOrWhiteSpace(plan.Vents[k].Name)) plan.Vents[k].Name = NextFree("V", k + 1, lines);

        for (int k = 0; k < plan.Gaps.Count; k++)
            if (string.IsNullOrWhiteSpace(plan.Gaps[k].Name)) plan.Gaps[k].Name = NextFree("G", k + 1, lines);

        var layers = new HashSet<string>(plan.FlowMeshes.Select(mesh => mesh.Name).Concat(plan.Cores.Select(core => core.Name)), StringComparer.Ordinal);
        for (int k = 0; k < plan.FlowMeshes.Count; k++)
            if (string.IsNullOrWhiteSpace(plan.FlowMeshes[k].Name)) plan.FlowMeshes[k].Name = NextFree("Mesh", k + 1, layers);
        for (int k = 0; k < plan.Cores.Count; k++)
            if (string.IsNullOrWhiteSpace(plan.Cores[k].Name)) plan.Cores[k].Name = NextFree("Core", k + 1, layers);

        var pots = new HashSet<string>(plan.Pots.Select(pot => pot.Name), StringComparer.Ordinal);
        for (int k = 0; k < plan.Pots.Count; k++)
            if (string.IsNullOrWhiteSpace(plan.Pots[k].Name)) plan.Pots[k].Name = NextFree("Pot", k + 1, pots);

        var marks = new HashSet<string>(plan.TimingMarks.Select(mark => mark.Name), StringComparer.Ordinal);
        for (int k = 0; k < plan.TimingMarks.Count; k++)
            if (string.IsNullOrWhiteSpace(plan.TimingMarks[k].Name)) plan.TimingMarks[k].Name = NextFree("M", k + 1, marks);

        if (plan.Preform is not Preform preform) return;
        var zones = new HashSet<string>(preform.Zones.Select(zone => zone.Name), StringComparer.Ordinal);
        for (int k = 0; k < preform.Zones.Count; k++)
            if (string.IsNullOrWhiteSpace(preform.Zones[k].Name)) preform.Zones[k].Name = NextFree("Z", k + 1, zones);
    }

    private static string NextFree(string stem, int number, HashSet<string> taken)
    {
        while (!taken.Add($"{stem}{number}")) number++;
        return $"{stem}{number}";
    }
}

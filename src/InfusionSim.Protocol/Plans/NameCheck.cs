using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that a name means one thing: a finding that speaks of V1 must not leave the reader guessing.</summary>
internal static class NameCheck
{
    /// <summary>Checks the names of a plan whose empty names are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        var lines = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int k = 0; k < plan.Feeds.Count; k++) Check(plan.Feeds[k].Name, $"feeds[{k}].name", lines, faults);
        for (int k = 0; k < plan.Vents.Count; k++) Check(plan.Vents[k].Name, $"vents[{k}].name", lines, faults);

        for (int k = 0; k < plan.Gaps.Count; k++) Check(plan.Gaps[k].Name, $"gaps[{k}].name", lines, faults);

        var layers = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int k = 0; k < plan.FlowMeshes.Count; k++) Check(plan.FlowMeshes[k].Name, $"flowMeshes[{k}].name", layers, faults);
        for (int k = 0; k < plan.Cores.Count; k++) Check(plan.Cores[k].Name, $"cores[{k}].name", layers, faults);

        var pots = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int k = 0; k < plan.Pots.Count; k++) Check(plan.Pots[k].Name, $"pots[{k}].name", pots, faults);

        var marks = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int k = 0; k < plan.TimingMarks.Count; k++) Check(plan.TimingMarks[k].Name, $"timingMarks[{k}].name", marks, faults);

        var zones = new Dictionary<string, string>(StringComparer.Ordinal);
        for (int k = 0; k < (plan.Preform?.Zones.Count ?? 0); k++) Check(plan.Preform!.Zones[k].Name, $"preform.zones[{k}].name", zones, faults);
    }

    private static void Check(string name, string path, Dictionary<string, string> taken, FaultList faults)
    {
        if (taken.TryAdd(name, path)) return;
        faults.Add(path, $"{path} is '{ValueReader.Shorten(name)}', and so is {taken[name]}; give each its own name.");
    }
}

using Google.Protobuf;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Refuses by name what the contract knows but this version cannot compute: a forecast that silently leaves an effect out would be wrong.</summary>
internal static class NotComputedCheck
{
    private static readonly MessageParser<InfusionPlan> KnownOnly = InfusionPlan.Parser.WithDiscardUnknownFields(true);

    /// <summary>Checks a plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        CheckLayers(plan, faults);
        CheckLines(plan, faults);
        if (plan.Slope is not null) Refuse(faults, "slope", "slope asks for a panel that does not lie level; this version cannot compute one. Take it out.");
        for (int k = 0; k < (plan.Preform?.Zones.Count ?? 0); k++) CheckZone(plan.Preform!.Zones[k], $"preform.zones[{k}]", faults);
        if (KnownOnly.ParseFrom(plan.ToByteArray()).CalculateSize() != plan.CalculateSize())
            Refuse(faults, "", "The plan holds fields that this version does not know, so leaving them out would answer another question. Use a newer service.");
    }

    private static void CheckLayers(InfusionPlan plan, FaultList faults)
    {
        for (int k = 0; k < plan.FlowMeshes.Count; k++)
            Refuse(faults, $"flowMeshes[{k}]", $"flowMeshes[{k}] asks for a flow mesh; this version cannot compute one. Take it out, or give the zone the thickness and permeability of cloth and mesh together.");
        for (int k = 0; k < plan.Cores.Count; k++)
            Refuse(faults, $"cores[{k}]", $"cores[{k}] asks for a core; this version cannot compute one. Take it out.");
        if (plan.PeelPly is not null) Refuse(faults, "peelPly", "peelPly asks for a layer of peel ply; this version cannot compute one. Take it out.");
        if (plan.Resolution is { HasSubLayers: true, SubLayers: > 1 })
            Refuse(faults, "resolution.subLayers", "resolution.subLayers asks for layers through the thickness; this version cannot compute them. Take it out.");
    }

    private static void CheckLines(InfusionPlan plan, FaultList faults)
    {
        for (int k = 0; k < plan.Gaps.Count; k++)
            Refuse(faults, $"gaps[{k}]", $"gaps[{k}] asks for an open channel; this version cannot compute one. Take it out.");
        for (int k = 0; k < plan.Feeds.Count; k++)
        {
            if (plan.Feeds[k].HasBoreMm) Refuse(faults, $"feeds[{k}].boreMm", $"feeds[{k}].boreMm asks for the pressure lost along a line; this version cannot compute it. Take it out.");
            if (plan.Feeds[k].Hose is not null) Refuse(faults, $"feeds[{k}].hose", $"feeds[{k}].hose asks for a hose; this version cannot compute one. Take it out.");
        }

        for (int k = 0; k < plan.Vents.Count; k++)
        {
            if (plan.Vents[k].HasBoreMm) Refuse(faults, $"vents[{k}].boreMm", $"vents[{k}].boreMm asks for the vacuum lost along a line; this version cannot compute it. Take it out.");
            if (plan.Vents[k].Hose is not null) Refuse(faults, $"vents[{k}].hose", $"vents[{k}].hose asks for a hose; this version cannot compute one. Take it out.");
        }

        for (int k = 0; k < plan.Pots.Count; k++)
            Refuse(faults, $"pots[{k}]", $"pots[{k}] asks for a pot; this version cannot compute one. Take it out.");
    }

    private static void CheckZone(Zone zone, string path, FaultList faults)
    {
        if (zone.LayUp is not null)
            Refuse(faults, path + ".layUp", $"{path}.layUp asks for a lay-up ply by ply; this version cannot compute one. Give the permeability of the whole.");
        string angle = path + ".permeability.angleDeg";
        if (zone.Permeability is not { HasAngleDeg: true } permeability || IsAlongAnAxis(permeability) || faults.HasAt(angle)) return;
        Refuse(faults, angle, $"{angle} is {Numbers.Say(permeability.AngleDeg)}°; this version computes multiples of 90° only, or any angle where k1M2 equals k2M2.");
    }

    private static void Refuse(FaultList faults, string path, string text) => faults.Add(path, text, ErrorReason.NotComputedYet);

    private static bool IsAlongAnAxis(Permeability permeability) =>
        !double.IsFinite(permeability.AngleDeg)
        || Math.Abs(Math.IEEERemainder(permeability.AngleDeg, 90)) < 1e-9
        || !permeability.HasK2M2
        || permeability.K1M2 == permeability.K2M2;
}

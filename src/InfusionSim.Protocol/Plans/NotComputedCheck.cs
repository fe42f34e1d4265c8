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
        for (int k = 0; k < plan.FlowMeshes.Count; k++)
            Refuse($"flowMeshes[{k}]", $"flowMeshes[{k}] asks for a flow mesh; this version cannot compute one. Take it out, or give the zone the thickness and permeability of cloth and mesh together.");
        for (int k = 0; k < plan.Gaps.Count; k++)
            Refuse($"gaps[{k}]", $"gaps[{k}] asks for an open channel; this version cannot compute one. Take it out.");
        for (int k = 0; k < (plan.Preform?.Zones.Count ?? 0); k++)
        {
            string path = $"preform.zones[{k}].permeability.angleDeg";
            if (plan.Preform!.Zones[k].Permeability is not { HasAngleDeg: true } permeability || IsAlongAnAxis(permeability) || faults.HasAt(path)) continue;
            Refuse(path, $"{path} is {Numbers.Say(permeability.AngleDeg)}°; this version computes multiples of 90° only, or any angle where k1M2 equals k2M2.");
        }

        if (KnownOnly.ParseFrom(plan.ToByteArray()).CalculateSize() != plan.CalculateSize())
            Refuse("", "The plan holds fields that this version does not know, so leaving them out would answer another question. Use a newer service.");

        void Refuse(string path, string text) => faults.Add(path, text, ErrorReason.NotComputedYet);
    }

    private static bool IsAlongAnAxis(Permeability permeability) =>
        !double.IsFinite(permeability.AngleDeg)
        || Math.Abs(Math.IEEERemainder(permeability.AngleDeg, 90)) < 1e-9
        || !permeability.HasK2M2
        || permeability.K1M2 == permeability.K2M2;
}

using Google.Protobuf;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Refuses by name what the contract knows but this version cannot compute: a forecast that silently leaves an effect out would be wrong.</summary>
internal static class NotComputedCheck
{
    private static readonly MessageParser<InfusionPlan> KnownOnly = InfusionPlan.Parser.WithDiscardUnknownFields(true);

    /// <summary>Checks a plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        for (int k = 0; k < plan.Pots.Count; k++)
            if (plan.Pots[k] is { LevelMm: not 0 }) Refuse($"pots[{k}].levelMm", $"pots[{k}].levelMm asks for a pot that does not stand level; this version cannot compute one. Take it out.");
        if (plan.Slope is not null) Refuse("slope", "slope asks for a panel that does not lie level; this version cannot compute one. Take it out.");
        if (KnownOnly.ParseFrom(plan.ToByteArray()).CalculateSize() != plan.CalculateSize())
            Refuse("", "The plan holds fields that this version does not know, so leaving them out would answer another question. Use a newer service.");

        void Refuse(string path, string text) => faults.Add(path, text, ErrorReason.NotComputedYet);
    }
}

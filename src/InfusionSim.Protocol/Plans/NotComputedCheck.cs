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
        if (KnownOnly.ParseFrom(plan.ToByteArray()).CalculateSize() != plan.CalculateSize())
            faults.Add("", "The plan holds fields that this version does not know, so leaving them out would answer another question. Use a newer service.", ErrorReason.NotComputedYet);
    }
}

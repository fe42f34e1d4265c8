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
        if (KnownOnly.ParseFrom(plan.ToByteArray()).CalculateSize() != plan.CalculateSize())
            faults.Add("", "The plan holds fields that this version does not know, so leaving them out would answer another question. Use a newer service.", ErrorReason.NotComputedYet);
        int pot = plan.Pots.ToList().FindIndex(static one => one.LevelMm != 0);
        if (pot >= 0) RefuseClamps(plan, $"pots[{pot}].levelMm", Numbers.Say(plan.Pots[pot].LevelMm), faults);
    }

    private static void RefuseClamps(InfusionPlan plan, string path, string value, FaultList faults)
    {
        bool isThrottled = plan.Feeds.Any(static feed => feed.HasOpenFraction && feed.OpenFraction != 1) || plan.Vents.Any(static vent => vent.HasOpenFraction && vent.OpenFraction != 1);
        if (!isThrottled && !PlannedTurn.Of(plan).Any()) return;
        faults.Add(
            path,
            $"{path} is {value}, and clamps are turned or the vacuum is changed: the two together cannot be computed yet. It must be 0 for that; "
            + "to see the weight of the resin leave opens, shuts, openFraction, clampSteps and bag.steps out.",
            ErrorReason.NotComputedYet);
    }
}

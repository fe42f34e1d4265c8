using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks every text of a plan: short enough for a screen, and without characters that steer a terminal.</summary>
internal static class TextCheck
{
    /// <summary>Checks every text of the plan.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        foreach (MessageWalk.Place place in MessageWalk.Fields(plan))
        {
            if (place.Field.FieldType != FieldType.String || place.Field.IsRepeated) continue;
            string text = (string)place.Field.Accessor.GetValue(place.Message);
            int longest = place.Path is "title" or "resin.source" ? PlanLimits.LongestTitle : PlanLimits.LongestName;
            if (text.Length > longest)
                faults.Add(place.Path, $"{place.Path} has {text.Length} letters (\"{ValueReader.Shorten(text)}\"); at most {longest} fit a screen. Shorten it.", ErrorReason.TooLarge);
            if (text.Any(char.IsControl))
                faults.Add(place.Path, $"{place.Path} (\"{ValueReader.Shorten(text)}\") holds a line break or another control character. Write it on one line.");
        }
    }
}

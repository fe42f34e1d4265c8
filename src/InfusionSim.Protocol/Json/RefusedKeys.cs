using Google.Protobuf.Reflection;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Json;

/// <summary>Keys that somebody may hope for, and whose effect cannot be computed: what to plan by instead.</summary>
public static class RefusedKeys
{
    private const string OneAge = "All resin has one age here: a second batch or a refilled pot mixes old with fresh, and that cannot be computed. Plan as if all of it were as old as the oldest batch: that is the cautious answer.";

    private const string OneTemperature = "All of the panel has one temperature here: a heated zone cannot be computed. Plan with shop.temperatureDegC, the coldest place for the fill time and the warmest for gel; and as if all resin were as old as the oldest batch.";

    private static readonly (HashSet<string> Messages, string[] Words, string Answer)[] Refused =
    [
        ([Resin.Descriptor.Name, Pot.Descriptor.Name, Feed.Descriptor.Name, InfusionPlan.Descriptor.Name], ["BATCH", "REFILL", "TOPUP", "SECONDMIX"], OneAge),
        ([Zone.Descriptor.Name, Preform.Descriptor.Name, Core.Descriptor.Name, Feed.Descriptor.Name, Hose.Descriptor.Name, Pot.Descriptor.Name], ["TEMPERATURE", "DEGC", "HEAT"], OneTemperature),
    ];

    /// <summary>What to say of a key that is none; null where there is nothing to say but that.</summary>
    /// <param name="message">The message that was looked in.</param>
    /// <param name="key">The key.</param>
    public static string? Answer(MessageDescriptor message, string key)
    {
        ArgumentNullException.ThrowIfNull(message);
        ArgumentNullException.ThrowIfNull(key);
        string plain = key.Replace("_", "", StringComparison.Ordinal).ToUpperInvariant();
        return Refused.FirstOrDefault(one => one.Messages.Contains(message.Name) && one.Words.Any(word => plain.Contains(word, StringComparison.Ordinal))).Answer;
    }
}

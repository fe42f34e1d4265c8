using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Settings;

/// <summary>The keys of a plan, and the nearest to one that there is not.</summary>
public static class PlanKeys
{
    private static readonly Lazy<IReadOnlyList<string>> Values = new(() => [.. ValuesUnder(InfusionPlan.Descriptor, "")]);

    /// <summary>Paths of all keys that hold a value, list items written as [0].</summary>
    public static IReadOnlyList<string> All => Values.Value;

    /// <summary>Field of a message by its key.</summary>
    /// <param name="message">The message.</param>
    /// <param name="key">Key as a plan file writes it.</param>
    public static FieldDescriptor? Find(MessageDescriptor message, string key) =>
        message.Fields.InDeclarationOrder().FirstOrDefault(field => field.JsonName == key);

    /// <summary>Says that there is no such key, with the nearest that there is.</summary>
    /// <param name="message">The message that was looked in.</param>
    /// <param name="path">Where it stands in the plan; empty at the root.</param>
    /// <param name="key">The unknown key.</param>
    public static string Unknown(MessageDescriptor message, string path, string key)
    {
        string prefix = path.Length == 0 ? "" : path + ".";
        if (RefusedKeys.Answer(message, key) is string refused) return $"a plan has no key {prefix}{key}. {refused}";
        string? nearest = NearestKey.Of(key, message.Fields.InDeclarationOrder().Select(field => field.JsonName));
        string? whole = nearest is not null ? prefix + nearest : Elsewhere(key);
        string hint = whole is null ? $"Keys here: {string.Join(", ", message.Fields.InDeclarationOrder().Select(field => field.JsonName))}." : $"Did you mean {whole}?";
        return $"a plan has no key {prefix}{key}. {hint}";
    }

    // Somebody types viscosityPaS alone, or porosity without the zone.
    private static string? Elsewhere(string key)
    {
        string? leaf = NearestKey.Of(key, All.Select(Leaf));
        return leaf is null ? null : All.First(path => Leaf(path) == leaf);
    }

    private static string Leaf(string path) => path[(path.LastIndexOf('.') + 1)..];

    private static IEnumerable<string> ValuesUnder(MessageDescriptor message, string prefix)
    {
        foreach (FieldDescriptor field in message.Fields.InDeclarationOrder())
        {
            string path = prefix + field.JsonName + (field.IsRepeated ? "[0]" : "");
            if (field.FieldType != FieldType.Message) yield return path;
            else foreach (string below in ValuesUnder(field.MessageType, path + ".")) yield return below;
        }
    }
}

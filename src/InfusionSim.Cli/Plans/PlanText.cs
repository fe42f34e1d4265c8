using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Plans;

/// <summary>Lays a plan out for a person: what fits on a line stays on a line.</summary>
public static class PlanText
{
    private const int Width = 110;
    private const int Step = 2;

    // Items up to this long share lines: the corners of an outline.
    private const int ShortItem = 36;

    private static readonly JsonSerializerOptions Readable = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Text of a plan file.</summary>
    /// <param name="plan">The plan; only what is set is written.</param>
    public static string Of(InfusionPlan plan)
    {
        StringBuilder text = new();
        Write(text, JsonNode.Parse(PlanJson.Write(plan))!, 0, 0);
        return text.Append('\n').ToString();
    }

    private static void Write(StringBuilder text, JsonNode? node, int indent, int used)
    {
        string line = OnOneLine(node);
        bool isRoot = indent == 0 && used == 0;
        if (!isRoot && indent + used + line.Length <= Width || node is not (JsonObject or JsonArray))
        {
            text.Append(line);
            return;
        }

        if (node is JsonArray { Count: > 0 } items && items.All(item => OnOneLine(item).Length <= ShortItem)) WriteSideBySide(text, items, indent);
        else WriteBelow(text, node, indent);
    }

    private static void WriteSideBySide(StringBuilder text, JsonArray items, int indent)
    {
        text.Append('[');
        int used = Width;
        foreach (JsonNode? item in items)
        {
            string line = OnOneLine(item);
            bool isFirst = item == items[0];
            if (!isFirst) text.Append(',');
            bool breaks = used + line.Length + 2 > Width;
            if (breaks) text.Append('\n').Append(' ', indent + Step);
            else text.Append(' ');
            used = (breaks ? indent + Step : used + 2) + line.Length;
            text.Append(line);
        }

        text.Append('\n').Append(' ', indent).Append(']');
    }

    private static void WriteBelow(StringBuilder text, JsonNode node, int indent)
    {
        (char open, char close) = node is JsonObject ? ('{', '}') : ('[', ']');
        text.Append(open);
        bool isFirst = true;
        foreach ((string? key, JsonNode? value) in Items(node))
        {
            text.Append(isFirst ? "\n" : ",\n").Append(' ', indent + Step);
            string lead = key is null ? "" : $"\"{key}\": ";
            text.Append(lead);
            Write(text, value, indent + Step, lead.Length + 1);
            isFirst = false;
        }

        text.Append('\n').Append(' ', indent).Append(close);
    }

    private static IEnumerable<(string? Key, JsonNode? Value)> Items(JsonNode node) => node is JsonObject fields
        ? fields.Select(field => ((string?)field.Key, field.Value))
        : node.AsArray().Select(item => ((string?)null, item));

    private static string OnOneLine(JsonNode? node) => node switch
    {
        JsonObject { Count: > 0 } fields => $"{{ {string.Join(", ", fields.Select(field => $"\"{field.Key}\": {OnOneLine(field.Value)}"))} }}",
        JsonArray { Count: > 0 } items => $"[ {string.Join(", ", items.Select(OnOneLine))} ]",
        null => "null",
        JsonValue value when value.GetValueKind() == JsonValueKind.Number => value.ToJsonString().Replace('E', 'e'),
        _ => node.ToJsonString(Readable),
    };
}

using System.Text.Json;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Json;

/// <summary>Reads one JSON value into a scalar of a message.</summary>
/// <param name="faults">Takes the faults.</param>
internal sealed class ValueReader(FaultList faults)
{
    /// <summary>The value as the field's own type, or null after a fault.</summary>
    public object? Read(JsonElement value, FieldDescriptor field, string path) => field.FieldType switch
    {
        FieldType.Double => ReadNumber(value, path),
        FieldType.Float => ReadNumber(value, path) is double number ? (float)number : null,
        FieldType.Int32 => ReadWhole(value, path, int.MinValue, int.MaxValue) is double whole ? (int)whole : null,
        FieldType.UInt32 => ReadWhole(value, path, 0, uint.MaxValue) is double whole ? (uint)whole : null,
        FieldType.Bool => ReadTruth(value, path),
        FieldType.String => ReadText(value, path),
        FieldType.Enum => ReadChoice(value, field.EnumType, path),
        FieldType.Bytes => ReadBytes(value, path),
        _ => throw new NotSupportedException($"{field.FullName} is of a type that no request holds."),
    };

    /// <summary>What a value is, for a sentence.</summary>
    public static string KindOf(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "an object { … }",
        JsonValueKind.Array => "a list [ … ]",
        JsonValueKind.String => $"the text \"{Shorten(TryGetText(value.GetString, out string text) ? text : "…")}\"",
        JsonValueKind.Number => $"the number {Shorten(value.GetRawText())}",
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => "null",
    };

    /// <summary>A text short enough for a sentence and free of control characters.</summary>
    public static string Shorten(string text) => PlainText.Of(text, 40);

    /// <summary>Reads a JSON text; false when it holds half a letter.</summary>
    public static bool TryGetText(Func<string?> read, out string text)
    {
        try
        {
            text = read() ?? "";
            return true;
        }
        catch (InvalidOperationException)
        {
            text = "";
            return false;
        }
    }

    private double? ReadNumber(JsonElement value, string path)
    {
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number) && double.IsFinite(number)) return number;
        if (value.ValueKind == JsonValueKind.Number)
            faults.Add(path, $"{path} is {Shorten(value.GetRawText())}, too large to be a number. Give a finite one.");
        else if (value.ValueKind == JsonValueKind.String)
            faults.Add(path, $"{path} is {KindOf(value)}; give a plain number without quotes and without a unit: the key names the unit.");
        else
            faults.Add(path, $"{path} must be a number; it is {KindOf(value)}.");
        return null;
    }

    private double? ReadWhole(JsonElement value, string path, double least, double most)
    {
        if (value.ValueKind == JsonValueKind.Number && value.TryGetDouble(out double number)
            && number == Math.Floor(number) && number >= least && number <= most) return number;
        faults.Add(path, $"{path} must be a whole number; it is {KindOf(value)}.");
        return null;
    }

    private bool? ReadTruth(JsonElement value, string path)
    {
        if (value.ValueKind is JsonValueKind.True or JsonValueKind.False) return value.GetBoolean();
        faults.Add(path, $"{path} must be true or false; it is {KindOf(value)}.");
        return null;
    }

    private string? ReadText(JsonElement value, string path)
    {
        if (value.ValueKind != JsonValueKind.String)
        {
            faults.Add(path, $"{path} must be a text in quotes; it is {KindOf(value)}.");
            return null;
        }

        if (TryGetText(value.GetString, out string text)) return text;
        faults.Add(path, $"{path} holds half a letter (a lone surrogate).", ErrorReason.NotJson);
        return null;
    }

    private int? ReadChoice(JsonElement value, EnumDescriptor choices, string path)
    {
        string[] names = [.. choices.Values.Where(choice => choice.Number != 0).Select(choice => choice.Name)];
        if (value.ValueKind == JsonValueKind.String && TryGetText(value.GetString, out string name)
            && choices.FindValueByName(name) is EnumValueDescriptor found) return found.Number;
        string? nearest = value.ValueKind == JsonValueKind.String && TryGetText(value.GetString, out string text) ? Nearest(text, names) : null;
        string advice = nearest is not null ? $"Did you mean {nearest}?" : $"It must be one of {string.Join(", ", names)}.";
        faults.Add(path, $"{path} is {KindOf(value)}. {advice}");
        return null;
    }

    // TOOL_SIDE is short for PANEL_FACE_TOOL_SIDE.
    private static string? Nearest(string text, string[] names) =>
        text.Length > 2 && names.FirstOrDefault(name => name.EndsWith("_" + text, StringComparison.OrdinalIgnoreCase)) is string whole ? whole : NearestKey.Of(text, names);

    private ByteString? ReadBytes(JsonElement value, string path)
    {
        if (value.ValueKind == JsonValueKind.String && value.TryGetBytesFromBase64(out byte[]? bytes)) return ByteString.CopyFrom(bytes);
        faults.Add(path, $"{path} must be base64 text; it is {KindOf(value)}.");
        return null;
    }
}

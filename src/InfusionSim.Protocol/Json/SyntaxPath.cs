using System.Text;
using System.Text.Json;

namespace InfusionSim.Protocol.Json;

/// <summary>Finds in which value of a text the reading stops.</summary>
internal static class SyntaxPath
{
    private const string PlanPrefix = "plan.";

    /// <summary>Path of the value that cannot be read: resin.viscosityPaS, gaps[0]; empty at the root or when all of it can be read.</summary>
    public static string Of(ReadOnlySpan<byte> json)
    {
        var reader = new Utf8JsonReader(json, new JsonReaderOptions { MaxDepth = MessageReader.MostDepth });
        var levels = new Stack<Level>();
        try
        {
            while (reader.Read())
                Follow(ref reader, levels);
        }
        catch (JsonException)
        {
            return Write(levels);
        }
        catch (InvalidOperationException)
        {
            // A key that holds half a letter has no name to tell.
            return "";
        }

        return "";
    }

    private static void Follow(ref Utf8JsonReader reader, Stack<Level> levels)
    {
        switch (reader.TokenType)
        {
            case JsonTokenType.PropertyName:
                levels.Peek().Key = reader.GetString();
                break;
            case JsonTokenType.StartObject or JsonTokenType.StartArray:
                levels.Push(new Level(reader.TokenType == JsonTokenType.StartArray));
                break;
            case JsonTokenType.EndObject or JsonTokenType.EndArray:
                levels.Pop();
                Pass(levels);
                break;
            default:
                Pass(levels);
                break;
        }
    }

    private static void Pass(Stack<Level> levels)
    {
        if (levels.Count == 0) return;
        Level level = levels.Peek();
        if (level.IsList) level.Index++;
        else level.Key = null;
    }

    private static string Write(Stack<Level> levels)
    {
        var path = new StringBuilder();
        foreach (Level level in levels.Reverse())
        {
            if (level.IsList) path.Append('[').Append(level.Index).Append(']');
            else if (level.Key is not null) path.Append(path.Length > 0 ? "." : "").Append(level.Key);
        }

        // A place in a plan is named from the plan's root, whichever way the plan came.
        string text = path.ToString();
        return text.StartsWith(PlanPrefix, StringComparison.Ordinal) ? text[PlanPrefix.Length..] : text;
    }

    private sealed class Level(bool isList)
    {
        public bool IsList { get; } = isList;

        public int Index { get; set; }

        public string? Key { get; set; }
    }
}

using System.Text;
using System.Text.Json;
using InfusionSim.Protocol.Faults;

namespace InfusionSim.Protocol.Json;

/// <summary>Says where and why a text is not JSON.</summary>
internal static class SyntaxFault
{
    // The reader quotes what it could not read, however long that is.
    private const int LongestReason = 160;

    /// <summary>One sentence with line and column, both counted from 1, and the place in the message where it is known.</summary>
    public static string Describe(JsonException exception, ReadOnlySpan<byte> json, string what, string path)
    {
        if (json.IsEmpty || json.Trim(" \t\r\n"u8).IsEmpty) return $"The {what} is empty; it must be a JSON object {{ … }}.";
        long line = exception.LineNumber ?? 0;
        ReadOnlySpan<byte> rest = json;
        for (long k = 0; k < line && rest.IndexOf((byte)'\n') is int end and >= 0; k++) rest = rest[(end + 1)..];
        int bytes = (int)Math.Clamp(exception.BytePositionInLine ?? 0, 0, rest.Length);
        int column = Encoding.UTF8.GetCharCount(rest[..bytes]) + 1;
        string within = path.Length > 0 ? $", in {ValueReader.Shorten(path)}" : "";
        return $"The {what} cannot be read as JSON at line {line + 1}, column {column}{within}: {ReasonOf(exception)}";
    }

    private static string ReasonOf(JsonException exception)
    {
        string text = exception.Message;
        int tail = text.IndexOf(" LineNumber:", StringComparison.Ordinal);
        if (tail > 0) text = text[..tail];
        if (text.Contains("end of data", StringComparison.Ordinal) || text.Contains("should be closed", StringComparison.Ordinal)) return "it ends in the middle: brackets are still open. Was the file cut off?";
        if (text.Contains("depth", StringComparison.Ordinal)) return $"it is nested more than {MessageReader.MostDepth} deep.";
        if (text.Contains("is an invalid JSON literal", StringComparison.Ordinal)) return $"{PlainText.Of(text[..text.IndexOf(" is an", StringComparison.Ordinal)], LongestReason)} stands where a number, true, false or a text in quotes must stand.";
        if (text.Contains("trailing comma", StringComparison.Ordinal)) return "there is a comma too many before the closing bracket.";
        if (text.Contains("NaN", StringComparison.Ordinal) || text.Contains("'N'", StringComparison.Ordinal) || text.Contains("'I'", StringComparison.Ordinal))
            return PlainText.Of(text, LongestReason) + " NaN and Infinity are not numbers here.";
        return PlainText.Of(text, LongestReason);
    }
}

namespace InfusionSim.Protocol.Faults;

/// <summary>Makes text that came from outside safe to print: a name with control characters could steer the reader's terminal.</summary>
internal static class PlainText
{
    /// <summary>The text on one line, without control characters, cut to a length.</summary>
    public static string Of(string text, int most)
    {
        string clean = text.Any(char.IsControl) ? string.Concat(text.Select(letter => char.IsControl(letter) ? '·' : letter)) : text;
        if (clean.Length <= most) return clean;
        int kept = char.IsHighSurrogate(clean[most - 2]) ? most - 2 : most - 1;
        return clean[..kept] + "…";
    }
}

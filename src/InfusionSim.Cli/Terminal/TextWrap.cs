namespace InfusionSim.Cli.Terminal;

/// <summary>Breaks text between words into lines that fit.</summary>
public static class TextWrap
{
    private const int Width = 110;
    private const int Narrowest = 40;
    private const int WidestLabel = 12;

    /// <summary>Lines of a sentence; the label stands before the first.</summary>
    /// <param name="label">The label.</param>
    /// <param name="sentence">The sentence.</param>
    /// <param name="labelWidth">Letters that the label takes [-].</param>
    /// <param name="width">Letters that a line of the screen holds [-]; null where nobody reads along an edge.</param>
    public static IEnumerable<string> Lines(string label, string sentence, int labelWidth, int? width = null)
    {
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(sentence);
        return Break(label.PadRight(labelWidth), sentence, labelWidth, Math.Clamp(width ?? Width, Narrowest, Width));
    }

    /// <summary>A ready line, broken where the screen ends; what follows stands under the first word behind its label or its leading blanks.</summary>
    /// <param name="line">The line.</param>
    /// <param name="width">Letters that a line of the screen holds [-]; null where nobody reads along an edge: the line stays as it is.</param>
    public static IEnumerable<string> Fold(string line, int? width)
    {
        ArgumentNullException.ThrowIfNull(line);
        if (width is not int known || line.Length <= Math.Max(known, Narrowest)) return [line];
        int indent = Indent(line);
        return Break(line[..indent], line[indent..], indent, Math.Max(known, Narrowest));
    }

    private static int Indent(string line)
    {
        int blanks = line.Length - line.TrimStart(' ').Length;
        int gap = line.IndexOf("  ", blanks, StringComparison.Ordinal);
        if (gap < 0 || gap > WidestLabel) return blanks;
        while (line[gap] == ' ') gap++;
        return gap;
    }

    private static IEnumerable<string> Break(string start, string sentence, int indent, int width)
    {
        string line = start;
        bool isEmpty = true;
        foreach (string word in sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isEmpty && line.Length + 1 + word.Length > width)
            {
                yield return line;
                (line, isEmpty) = (new string(' ', indent), true);
            }

            line += isEmpty ? word : " " + word;
            isEmpty = false;
        }

        yield return line;
    }
}

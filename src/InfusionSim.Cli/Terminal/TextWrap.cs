namespace InfusionSim.Cli.Terminal;

/// <summary>Breaks a sentence into lines below a label.</summary>
public static class TextWrap
{
    private const int Width = 110;

    /// <summary>Lines of a sentence; the label stands before the first.</summary>
    /// <param name="label">The label.</param>
    /// <param name="sentence">The sentence.</param>
    /// <param name="labelWidth">Letters that the label takes [-].</param>
    public static IEnumerable<string> Lines(string label, string sentence, int labelWidth)
    {
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(sentence);
        string line = label.PadRight(labelWidth);
        bool isEmpty = true;
        foreach (string word in sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isEmpty && line.Length + 1 + word.Length > Width)
            {
                yield return line;
                (line, isEmpty) = (new string(' ', labelWidth), true);
            }

            line += isEmpty ? word : " " + word;
            isEmpty = false;
        }

        yield return line;
    }
}

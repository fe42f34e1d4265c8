using System.Globalization;
using System.Text.RegularExpressions;

namespace InfusionSim.Cli.Answers;

/// <summary>Names a resin card by its file, where the service names it by its place in the question.</summary>
public static partial class CardPlaces
{
    /// <summary>A sentence with the file in the place of the number: calm.json: viscosityPaS is 200 Pa·s.</summary>
    /// <param name="sentence">The sentence, with cards[1].viscosityPaS in it.</param>
    /// <param name="files">The files, in the order of the cards.</param>
    public static string ByFile(string sentence, IReadOnlyList<string> files)
    {
        ArgumentNullException.ThrowIfNull(files);
        return Place().Replace(sentence, place =>
            int.TryParse(place.Groups["index"].Value, NumberStyles.None, CultureInfo.InvariantCulture, out int index) && index < files.Count ? $"{files[index]}: " : place.Value);
    }

    [GeneratedRegex(@"\bcards\[(?<index>\d+)\]\.")]
    private static partial Regex Place();
}

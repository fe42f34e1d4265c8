using System.Globalization;
using System.Text.RegularExpressions;

namespace InfusionSim.Cli.Settings;

/// <summary>One step of a key: a field, and for a list which of its items, by number or by name.</summary>
/// <param name="Name">Field as a plan file writes it.</param>
/// <param name="Item">What stands in brackets; null when there are none.</param>
public sealed partial record KeyStep(string Name, string? Item)
{
    /// <summary>Number of the item, counted from 0; null when it is a name.</summary>
    public int? Number => int.TryParse(Item, NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;

    /// <summary>Takes a key apart at its dots.</summary>
    /// <param name="key">Key as typed: preform.zones[0].porosity or preform.zones[skin].porosity.</param>
    /// <exception cref="FormatException">When a step cannot be read.</exception>
    public static IReadOnlyList<KeyStep> Split(string key) =>
        [.. Dot().Split(key).Select(step => Step().Match(step) is { Success: true } match
            ? new KeyStep(match.Groups["name"].Value, match.Groups["item"].Success ? match.Groups["item"].Value : null)
            : throw new FormatException($"'{key}' cannot be read as a key; write it like resin.viscosityPaS or preform.zones[0].porosity."))];

    [GeneratedRegex(@"\.(?![^\[]*\])")]
    private static partial Regex Dot();

    [GeneratedRegex(@"^(?<name>\w+)(?:\[(?<item>[^\[\]]+)\])?$")]
    private static partial Regex Step();
}

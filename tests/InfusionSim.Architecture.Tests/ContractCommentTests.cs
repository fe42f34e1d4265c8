using System.Text.RegularExpressions;

namespace InfusionSim.Architecture.Tests;

/// <summary>Everything in the contract says in its own comment what it is.</summary>
public sealed partial class ContractCommentTests
{
    public static TheoryData<string> Files => [.. House.Sources("*.proto", "protos")];

    [Theory]
    [MemberData(nameof(Files))]
    public void Contract_EveryElement_HasACommentThatBeginsWithItsName(string path)
    {
        string[] lines = House.Text(path).Split('\n');
        List<string> faults = [];
        int elements = 0;
        for (int at = 0; at < lines.Length; at++)
        {
            string? name = NameOf(lines[at]);
            if (name is null) continue;
            elements++;
            int first = at;
            while (first > 0 && lines[first - 1].TrimStart().StartsWith("//", StringComparison.Ordinal)) first--;
            string comment = lines[first].Trim().TrimStart('/').Trim();
            if (first == at || !Regex.IsMatch(comment, $@"^{Regex.Escape(name)}\b")) faults.Add($"{path}:{at + 1}: {name}");
        }

        elements.ShouldBeGreaterThan(0);
        faults.ShouldBeEmpty();
    }

    private static string? NameOf(string line)
    {
        foreach (Regex kind in new[] { Declaration(), Field(), EnumValue() })
            if (kind.Match(line) is { Success: true } match)
                return match.Groups["name"].Value;
        return null;
    }

    [GeneratedRegex(@"^\s*(?:message|enum|service|rpc|oneof)\s+(?<name>\w+)")]
    private static partial Regex Declaration();

    [GeneratedRegex(@"^\s+(?:optional\s+|repeated\s+)?[\w.]+(?:<[^>]+>)?\s+(?<name>[a-z]\w*)\s*=\s*\d+")]
    private static partial Regex Field();

    [GeneratedRegex(@"^\s+(?<name>[A-Z][A-Z0-9_]*)\s*=\s*\d+")]
    private static partial Regex EnumValue();
}

using System.Text.RegularExpressions;

namespace InfusionSim.Architecture.Tests;

/// <summary>Splits names into words and finds the words that the house does not use.</summary>
internal static partial class Words
{
    /// <summary>Words of other trades for what is called feed, vent, fitting and timing mark here.</summary>
    private static readonly HashSet<string> ForeignWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "gate", "gates", "injection", "injections", "inject", "injects", "injected", "inlet", "inlets",
        "outlet", "outlets", "sensor", "sensors", "valve", "valves",
    };

    /// <summary>Words that say nothing about what a type is.</summary>
    private static readonly HashSet<string> EmptyWords = new(StringComparer.OrdinalIgnoreCase)
    {
        "Common", "Shared", "Util", "Utils", "Utility", "Utilities", "Helper", "Helpers", "Manager", "Managers",
    };

    /// <summary>Foreign words in a text or a name.</summary>
    public static IEnumerable<string> ForeignIn(string text) => Of(text).Where(ForeignWords.Contains);

    /// <summary>Empty words in a name.</summary>
    public static IEnumerable<string> EmptyIn(string name) => Of(name).Where(EmptyWords.Contains);

    /// <summary>Words of a text; a capital inside a name begins a new one.</summary>
    public static IEnumerable<string> Of(string text) => Word().Matches(text).Select(match => match.Value);

    [GeneratedRegex("[A-Z]+(?![a-z])|[A-Z]?[a-z]+")]
    private static partial Regex Word();
}

using System.CommandLine;

namespace InfusionSim.Cli.Commands;

/// <summary>A command whose help ends with examples that work as they stand.</summary>
/// <param name="name">What to type.</param>
/// <param name="description">What it does, in a sentence.</param>
/// <param name="examples">Lines to copy.</param>
internal sealed class ExampleCommand(string name, string description, params string[] examples) : Command(name, description)
{
    /// <summary>Lines to copy.</summary>
    public IReadOnlyList<string> Examples { get; } = examples;

    /// <summary>Text below the examples; empty for none.</summary>
    public string Footnote { get; init; } = "";
}

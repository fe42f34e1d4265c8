using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace InfusionSim.Cli.Commands;

/// <summary>Help that ends with the examples of its command.</summary>
/// <param name="help">The help as the library writes it.</param>
public sealed class ExampleHelp(HelpAction help) : SynchronousCommandLineAction
{
    /// <summary>Gives every command below a root the help with examples.</summary>
    /// <param name="root">The root.</param>
    public static void AddTo(RootCommand root)
    {
        ArgumentNullException.ThrowIfNull(root);
        HelpOption option = root.Options.OfType<HelpOption>().Single();
        option.Action = new ExampleHelp((HelpAction)option.Action!);
    }

    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        ArgumentNullException.ThrowIfNull(parseResult);
        int code = help.Invoke(parseResult);
        if (parseResult.CommandResult.Command is not ExampleCommand command) return code;
        TextWriter output = parseResult.InvocationConfiguration.Output;
        if (command.Footnote.Length > 0) output.WriteLine(command.Footnote + "\n");
        output.WriteLine(command.Examples.Count == 1 ? "Example:" : "Examples:");
        foreach (string example in command.Examples) output.WriteLine($"  {example}");
        return code;
    }
}

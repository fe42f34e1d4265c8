using System.CommandLine;
using System.Text.RegularExpressions;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli.Commands;

/// <summary>All commands, and the one way to run them.</summary>
public static partial class CommandLine
{
    private const int Interrupted = 130;

    /// <summary>Runs what was typed.</summary>
    /// <param name="typed">Words behind the program's name.</param>
    /// <param name="screen">Where to write.</param>
    /// <param name="cancellation">Stops the command.</param>
    /// <returns>Exit code of the program.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> typed, Screen screen, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(screen);
        try
        {
            ParseResult parsed = Root(screen).Parse(typed);
            InvocationConfiguration configuration = new() { Output = screen.Output, Error = screen.Error, EnableDefaultExceptionHandler = false };
            if (parsed.Errors.Count == 0 || parsed.Action is ExampleHelp) return await parsed.InvokeAsync(configuration, cancellation);
            Complain(parsed, screen);
            return ExitCodes.BadInput;
        }
        catch (CommandException failure)
        {
            foreach (string line in failure.Lines) screen.Tell(line);
            return failure.ExitCode;
        }
        catch (OperationCanceledException)
        {
            screen.Tell("Stopped.");
            return Interrupted;
        }
    }

    /// <summary>The command line with all its commands.</summary>
    /// <param name="screen">Where to write.</param>
    public static RootCommand Root(Screen screen)
    {
        RootCommand root = new("Predicts a vacuum infusion before the feed is opened: when the cloth is full, in what order, and where air stays behind.")
        {
            DemoCommand.Create(screen),
            NewCommand.Create(screen),
            FillCommand.Create(screen),
            CompareCommand.Create(screen),
            ResinsCommand.Create(screen),
            WatchCommand.Create(screen),
            PlotCommand.Create(screen),
            MixCommand.Create(screen),
            ServeCommand.Create(screen),
            SelftestCommand.Create(screen),
        };
        ExampleHelp.AddTo(root);
        return root;
    }

    // The library names the nearest command only when it prints its own report, which ends with the whole help.
    private static void Complain(ParseResult parsed, Screen screen)
    {
        Command command = parsed.CommandResult.Command;
        bool isUnknown = command is RootCommand && parsed.UnmatchedTokens.Count > 0;
        if (isUnknown) screen.Tell($"there is no command '{parsed.UnmatchedTokens[0]}'.");
        else foreach (string message in parsed.Errors.Select(error => InWords(error.Message)).Distinct()) screen.Tell(message);
        IEnumerable<string> known = command.Subcommands.Select(one => one.Name).Concat(command.Options.Select(one => one.Name));
        foreach (string word in parsed.UnmatchedTokens.Concat(parsed.CommandResult.Tokens.Select(token => token.Value)).Distinct())
            if (Protocol.Json.NearestKey.Of(word, known) is string nearest && nearest != word) screen.Tell($"Did you mean {nearest}?");
        string name = command is RootCommand ? "infusionsim" : $"infusionsim {command.Name}";
        screen.Tell($"`{name} --help` shows what can be typed.");
    }

    // The library speaks of its own types.
    private static string InWords(string message) => WrongKind().Match(message) is { Success: true } wrong
        ? $"{wrong.Groups["option"].Value} {wrong.Groups["typed"].Value}: '{wrong.Groups["typed"].Value}' is no whole number."
        : message;

    [GeneratedRegex("^Cannot parse argument '(?<typed>.*)' for option '(?<option>.*)' as expected type 'System.Int32'")]
    private static partial Regex WrongKind();
}

namespace InfusionSim.Cli.Commands;

/// <summary>A command that cannot go on, with what to tell the person who typed it.</summary>
public sealed class CommandException : Exception
{
    /// <summary>Makes a failure with one line.</summary>
    /// <param name="exitCode">Exit code of the command.</param>
    /// <param name="line">What to tell.</param>
    public CommandException(int exitCode, string line)
        : this(exitCode, [line])
    {
    }

    /// <summary>Makes a failure with several lines.</summary>
    /// <param name="exitCode">Exit code of the command.</param>
    /// <param name="lines">What to tell.</param>
    public CommandException(int exitCode, IReadOnlyList<string> lines)
        : base(string.Join('\n', lines))
    {
        ExitCode = exitCode;
        Lines = lines;
    }

    /// <summary>Exit code of the command.</summary>
    public int ExitCode { get; }

    /// <summary>What to tell, a line each.</summary>
    public IReadOnlyList<string> Lines { get; }
}

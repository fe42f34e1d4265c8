using Spectre.Console;

namespace InfusionSim.Cli.Terminal;

/// <summary>Where a command writes: answers to one side, everything else to the other.</summary>
/// <param name="Output">Answers.</param>
/// <param name="Error">Everything that is no answer: progress, warnings, faults.</param>
public sealed record Screen(TextWriter Output, TextWriter Error)
{
    private const string EraseLine = "\r\u001b[K";

    private bool _hasBegun;

    /// <summary>What a person types while a command runs; nothing unless it is asked for.</summary>
    public TextReader Input { get; init; } = TextReader.Null;

    /// <summary>Whether somebody watches the error side: only then is there a bar.</summary>
    public bool ShowsProgress { get; init; }

    /// <summary>Whether answers may be coloured.</summary>
    public bool ShowsColour { get; init; }

    /// <summary>Letters that a line holds [-], asked anew for each text because a window may be pulled wider; null where nobody reads along an edge.</summary>
    public Func<int?> Width { get; init; } = static () => null;

    /// <summary>The terminal this program runs in.</summary>
    public static Screen OfThisProcess() => new(Console.Out, Console.Error)
    {
        Input = Console.In,
        ShowsProgress = !Console.IsErrorRedirected && IsNotDumb,
        ShowsColour = !Console.IsOutputRedirected && IsNotDumb && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
        Width = Console.IsOutputRedirected ? static () => null : WindowWidth,
    };

    private static bool IsNotDumb => Environment.GetEnvironmentVariable("TERM") != "dumb";

    /// <summary>Says at once what has begun, where somebody watches; what comes next writes over it.</summary>
    /// <param name="what">What has begun.</param>
    public void Begin(string what)
    {
        if (!ShowsProgress) return;
        Error.Write($"{what}\r");
        _hasBegun = true;
    }

    /// <summary>Takes away what was said to have begun.</summary>
    public void Clear()
    {
        if (_hasBegun) Error.Write(EraseLine);
        _hasBegun = false;
    }

    /// <summary>Writes lines of an answer, broken where the screen ends.</summary>
    /// <param name="text">One line or several.</param>
    public void Answer(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Clear();
        foreach (string line in text.Split('\n').SelectMany(line => TextWrap.Fold(line, Width()))) Output.WriteLine(line);
    }

    /// <summary>Writes a line that is no answer, broken where the screen ends.</summary>
    /// <param name="line">The line.</param>
    public void Tell(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        Clear();
        foreach (string part in line.Split('\n').SelectMany(one => TextWrap.Fold(one, Width()))) Error.WriteLine(part);
    }

    /// <summary>Runs some work behind a bar, or without one where nobody watches.</summary>
    /// <typeparam name="T">What comes of it.</typeparam>
    /// <param name="title">What is being done.</param>
    /// <param name="work">The work; it tells the share that is done [-], 0 to 1.</param>
    public async Task<T> WithProgressAsync<T>(string title, Func<Action<double>, Task<T>> work)
    {
        ArgumentNullException.ThrowIfNull(work);
        if (!ShowsProgress) return await work(_ => { });
        Clear();
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Error) });
        return await console.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .StartAsync(async progress =>
            {
                ProgressTask task = progress.AddTask(Markup.Escape(title), maxValue: 1);
                return await work(share => task.Value = share);
            });
    }

    private static int? WindowWidth()
    {
        try
        {
            return Console.WindowWidth is > 0 and int columns ? columns : null;
        }
        catch (IOException)
        {
            return null;
        }
    }
}

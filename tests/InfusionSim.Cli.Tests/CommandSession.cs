using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli.Tests;

/// <summary>A folder of its own to run commands in, with all that they wrote.</summary>
internal sealed class CommandSession : IDisposable
{
    private static readonly string[] FileEndings = [".json", ".csv", ".png", ".svg", ".webp"];

    public string Folder { get; } = Directory.CreateTempSubdirectory("infusionsim-test-").FullName;

    public string Output { get; private set; } = "";

    public string Error { get; private set; } = "";

    /// <summary>What is typed while a command runs.</summary>
    public string Typed { get; set; } = "";

    /// <summary>Where it is typed; null reads <see cref="Typed"/>.</summary>
    public TextReader? Keyboard { get; set; }

    /// <summary>Letters that a line of the screen holds; null for none.</summary>
    public int? Width { get; set; }

    /// <summary>Runs a line as it would be typed in the folder; without the program's name.</summary>
    public async Task<int> RunAsync(string line, CancellationToken cancellation = default)
    {
        using StringWriter output = new(), error = new();
        string[] words = [.. line.Replace("\"", "", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(InFolder)];
        int code = await CommandLine.RunAsync(words, new Screen(output, error) { Input = Keyboard ?? new StringReader(Typed), Width = () => Width }, cancellation);
        (Output, Error) = (output.ToString().ReplaceLineEndings("\n"), error.ToString().ReplaceLineEndings("\n"));
        return code;
    }

    public string PathOf(string name) => Path.Combine(Folder, name);

    public string Read(string name) => File.ReadAllText(PathOf(name));

    public void Write(string name, string text) => File.WriteAllText(PathOf(name), text);

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    // The tests of one process have one current folder; files are named in full instead.
    private string InFolder(string word) =>
        word.StartsWith("infusionsim-demo", StringComparison.Ordinal) || !word.StartsWith('-') && FileEndings.Contains(Path.GetExtension(word)) ? PathOf(word) : word;
}

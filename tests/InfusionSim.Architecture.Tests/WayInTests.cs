using System.Text.RegularExpressions;

namespace InfusionSim.Architecture.Tests;

/// <summary>The way from Program.cs to the innermost loop, as DEVELOPERS.md prints it, exists.</summary>
public sealed partial class WayInTests
{
    private const int MostHops = 7;

    private static readonly string[] Papers = ["README.md", "DEVELOPERS.md"];

    private static readonly string[] Way = [.. NumberedFile().Matches(House.Text("DEVELOPERS.md")).Select(match => match.Groups["path"].Value)];

    [Fact]
    public void Way_FromProgramToTheInnermostLoop_TakesFewHops()
    {
        Way[0].ShouldEndWith("Program.cs");
        (Way.Length - 1).ShouldBeInRange(4, MostHops);
    }

    [Fact]
    public void Way_EveryStop_IsAFileOfTheHouse() =>
        Way.Where(path => !File.Exists(Path.Combine(House.Root, path))).ShouldBeEmpty();

    [Fact]
    public void Papers_EveryNamedFile_IsThere() =>
        Papers
            .SelectMany(paper => LinkedFile().Matches(House.Text(paper)).Select(match => match.Groups["path"].Value))
            .Where(path => !path.Contains("://", StringComparison.Ordinal) && !File.Exists(Path.Combine(House.Root, path)))
            .ShouldBeEmpty();

    [GeneratedRegex(@"^\d+\. `(?<path>[^`]+\.cs)`", RegexOptions.Multiline)]
    private static partial Regex NumberedFile();

    [GeneratedRegex(@"\]\((?<path>[^)#]+)\)")]
    private static partial Regex LinkedFile();
}

using System.Text.RegularExpressions;

namespace InfusionSim.Architecture.Tests;

/// <summary>A reader finds a type by its name: one type a file, the folder is the namespace, no file too long to read.</summary>
public sealed partial class SourceFileTests
{
    private const int MostLines = 400;

    /// <summary>Files that may be longer, each with its reason.</summary>
    private static readonly Dictionary<string, string> LongFiles = [];

    [Fact]
    public void Files_Lines_AreFewEnoughToRead() =>
        House.Sources("*.cs", "src", "plots", "tests")
            .Where(path => !LongFiles.ContainsKey(path))
            .Select(path => (path, Lines: House.Text(path).Count(one => one == '\n')))
            .Where(file => file.Lines > MostLines)
            .ShouldBeEmpty();

    [Fact]
    public void Files_Types_AreOneEachAndNamedAlike() =>
        House.Sources("*.cs", "src", "plots")
            .SelectMany(path => TypeDeclaration().Matches(House.Text(path)).Select(match => (path, Type: match.Groups["name"].Value)))
            .Where(one => Path.GetFileNameWithoutExtension(one.path).Split('.')[0] != one.Type)
            .ShouldBeEmpty();

    [Fact]
    public void Files_Namespaces_AreTheirFolders() =>
        House.Sources("*.cs", "src", "plots", "tests")
            .Select(path => (path, Namespace: NamespaceDeclaration().Match(House.Text(path)).Groups["name"].Value))
            .Where(one => one.Namespace.Length > 0 && one.Namespace != NamespaceOf(one.path))
            .ShouldBeEmpty();

    [Fact]
    public void Files_Regions_AreNotUsed() =>
        House.Sources("*.cs", "src", "plots", "tests").Where(path => RegionLine().IsMatch(House.Text(path))).ShouldBeEmpty();

    [Fact]
    public void Tests_Names_SaySubjectConditionOutcome() =>
        House.Sources("*.cs", "tests")
            .SelectMany(path => TestMethod().Matches(House.Text(path)).Select(match => $"{path}: {match.Groups["name"].Value}"))
            .Where(test => test.Count(one => one == '_') < 2)
            .ShouldBeEmpty();

    private static string NamespaceOf(string path) =>
        string.Join('.', Path.GetDirectoryName(path)!.Replace('\\', '/').Split('/').Skip(1));

    [GeneratedRegex(@"^(?:(?:public|internal|file|static|sealed|abstract|partial|readonly|ref|unsafe)\s+)*(?:class|record struct|record class|record|struct|interface|enum|delegate\s+\S+)\s+(?<name>\w+)", RegexOptions.Multiline)]
    private static partial Regex TypeDeclaration();

    [GeneratedRegex(@"^namespace\s+(?<name>[\w.]+)\s*;", RegexOptions.Multiline)]
    private static partial Regex NamespaceDeclaration();

    [GeneratedRegex(@"^\s*#\s*region\b", RegexOptions.Multiline)]
    private static partial Regex RegionLine();

    [GeneratedRegex(@"\[(?:Fact|Theory)\b[^\n]*\n(?:\s*\[[^\n]*\n)*\s*public\s+(?:static\s+)?(?:async\s+)?\w+\s+(?<name>\w+)\s*\(")]
    private static partial Regex TestMethod();
}

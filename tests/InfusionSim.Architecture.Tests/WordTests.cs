using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;

namespace InfusionSim.Architecture.Tests;

/// <summary>The words of the trade, in names, in the contract and in everything a person reads.</summary>
public sealed class WordTests
{
    public static TheoryData<string> Projects => [.. House.Projects];

    [Theory]
    [InlineData("the FrontGate opens", "Gate")]
    [InlineData("INLET_PRESSURE", "INLET")]
    [InlineData("delegate, propagate, aggregate", "")]
    [InlineData("ventOutlets", "Outlets")]
    public void Words_NamesAndTexts_AreSplitAtCapitals(string text, string found) =>
        string.Join(' ', Words.ForeignIn(text)).ShouldBe(found);

    [Theory]
    [MemberData(nameof(Projects))]
    public void Names_OfTypesAndNamespaces_SayWhatTheyAre(string project) =>
        TypesOf(project).Where(name => Words.EmptyIn(name).Any()).ShouldBeEmpty();

    [Theory]
    [MemberData(nameof(Projects))]
    public void Names_OfTypesAndMembers_AreWordsOfTheTrade(string project) =>
        TypesOf(project).Concat(House.Look(project, MembersOf)).Where(name => Words.ForeignIn(name).Any()).ShouldBeEmpty();

    [Theory]
    [MemberData(nameof(Projects))]
    public void Texts_InTheProgram_AreWordsOfTheTrade(string project) =>
        House.Look(project, TextsOf).Where(text => Words.ForeignIn(text).Any()).ShouldBeEmpty();

    [Fact]
    public void Contract_AndPapers_AreWordsOfTheTrade() =>
        House.Sources("*.proto", "protos").Append("README.md").Append("DEVELOPERS.md")
            .Where(path => File.Exists(Path.Combine(House.Root, path)))
            .SelectMany(path => Words.ForeignIn(House.Text(path)).Select(word => $"{path}: {word}"))
            .ShouldBeEmpty();

    // The tests of the words themselves have to spell what they look for.
    [Fact]
    public void Tests_EveryWord_IsOfTheTrade() =>
        House.Sources("*.cs", "tests")
            .Where(path => !path.StartsWith("tests/InfusionSim.Architecture.Tests/", StringComparison.Ordinal))
            .SelectMany(path => Words.ForeignIn(House.Text(path)).Select(word => $"{path}: {word}"))
            .ShouldBeEmpty();

    private static List<string> TypesOf(string project) => House.Look(project, metadata => metadata.TypeDefinitions
        .Select(metadata.GetTypeDefinition)
        .Where(type => !WrittenByAGenerator(metadata.GetString(type.Name)))
        .Select(type => $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}")
        .ToList());

    private static bool WrittenByAGenerator(string name) =>
        name.StartsWith('<') || name.StartsWith("__", StringComparison.Ordinal);

    private static List<string> MembersOf(MetadataReader metadata) =>
    [
        .. metadata.MethodDefinitions.Select(one => metadata.GetString(metadata.GetMethodDefinition(one).Name)),
        .. metadata.FieldDefinitions.Select(one => metadata.GetString(metadata.GetFieldDefinition(one).Name)),
        .. metadata.PropertyDefinitions.Select(one => metadata.GetString(metadata.GetPropertyDefinition(one).Name)),
    ];

    private static List<string> TextsOf(MetadataReader metadata)
    {
        List<string> texts = [];
        for (UserStringHandle at = MetadataTokens.UserStringHandle(0); !at.IsNil || texts.Count == 0; at = metadata.GetNextHandle(at))
            texts.Add(metadata.GetUserString(at));
        return texts;
    }
}

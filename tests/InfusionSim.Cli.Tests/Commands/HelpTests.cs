using System.CommandLine;
using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Terminal;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class HelpTests
{
    private static readonly RootCommand Root = CommandLine.Root(new Screen(TextWriter.Null, TextWriter.Null));

    public static TheoryData<string> Names => [.. Root.Subcommands.Select(command => command.Name)];

    public static TheoryData<string> Examples => [.. Root.Subcommands.Cast<ExampleCommand>().Where(command => command.Name is not ("serve" or "selftest")).SelectMany(command => command.Examples)];

    [Fact]
    public void Root_Help_ListsEveryCommand()
    {
        string[] expected = ["demo", "new", "fill", "compare", "resins", "watch", "plot", "mix", "serve", "selftest"];

        Root.Subcommands.Select(command => command.Name).ShouldBe(expected);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Command_Help_EndsWithItsExamples(string name)
    {
        using CommandSession session = new();
        ExampleCommand command = (ExampleCommand)Root.Subcommands.Single(one => one.Name == name);

        (await session.RunAsync($"{name} --help")).ShouldBe(ExitCodes.Done);

        command.Examples.ShouldNotBeEmpty();
        command.Examples.ShouldAllBe(example => example.StartsWith($"infusionsim {name}", StringComparison.Ordinal));
        session.Output.TrimEnd().ShouldEndWith("  " + command.Examples[^1]);
        session.Error.ShouldBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public async Task Example_FromTheHelp_Works(string example)
    {
        using CommandSession session = new();
        if (!example.StartsWith("infusionsim new", StringComparison.Ordinal)) await session.RunAsync("new plate 300x200 --set resolution.cellMm=10 -o plate.json");
        await session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o other.json");
        session.Write("mesh.json", SamplePlans.Mesh());
        session.Write("line.json", SamplePlans.Line());
        session.Write("quick.json", SamplePlans.QuickResin);
        session.Write("calm.json", SamplePlans.CalmResin);

        int code = await session.RunAsync(example["infusionsim ".Length..]);

        code.ShouldBe(ExitCodes.Done, session.Error);
        session.Output.ShouldNotBeEmpty();
    }

    [Theory]
    [InlineData("fil plate.json", "Did you mean fill?")]
    [InlineData("fill", "infusionsim fill --help")]
    [InlineData("fill plate.json --jsn", "Did you mean --json?")]
    [InlineData("compare plate.json", "infusionsim compare --help")]
    public async Task Line_ThatCannotBeRead_SaysWhatCanBeTyped(string line, string says)
    {
        using CommandSession session = new();

        (await session.RunAsync(line)).ShouldBe(ExitCodes.BadInput);

        session.Error.ShouldContain(says);
        session.Output.ShouldBeEmpty();
    }
}

using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class NewCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Fact]
    public async Task Plan_Written_IsNamedOnTheOutputAlone()
    {
        (await _session.RunAsync("new plate 600x400 -o plate.json")).ShouldBe(ExitCodes.Done);

        _session.Output.ShouldBe(_session.PathOf("plate.json") + "\n");
        _session.Error.ShouldContain("Next     infusionsim fill");
        _session.Read("plate.json").ShouldContain("\"title\": \"Plate 600 × 400 mm\"");
    }

    [Fact]
    public async Task Plan_WithAMesh_AnswersForBothSides()
    {
        (await _session.RunAsync("new strip 600x40 --mesh --set resolution.cellMm=10 -o meshed.json")).ShouldBe(ExitCodes.Done);
        _session.Error.ShouldContain("a flow mesh, cloth, resin and bag");
        _session.Read("meshed.json").ShouldContain("\"flowMeshes\"");

        (await _session.RunAsync("fill meshed.json")).ShouldBe(ExitCodes.Done, _session.Error);
        _session.Output.ShouldContain("\nTool     the tool side is up to ");
        _session.Output.ShouldContain(" g in the mesh");
    }

    [Fact]
    public async Task Plan_ThatIsThere_IsKeptUnlessForced()
    {
        _session.Write("plate.json", "mine");

        (await _session.RunAsync("new plate 600x400 -o plate.json")).ShouldBe(ExitCodes.BadInput);
        _session.Read("plate.json").ShouldBe("mine");
        _session.Error.ShouldContain("--force");

        (await _session.RunAsync("new plate 600x400 -o plate.json --force")).ShouldBe(ExitCodes.Done);
        _session.Read("plate.json").ShouldNotBe("mine");
    }

    [Theory]
    [InlineData("new plate 1e9x1e9 -o plate.json", "100000 mm")]
    [InlineData("new plate 600x400 -o plate.json --set resin.viscosityPaS=-3", "resin.viscosityPaS is -3 Pa·s; it must lie between")]
    [InlineData("new plate 600x400 -o plate.json --set resin.viscosityPaS=1e309", "'1e309' is larger than any number here")]
    public async Task Plan_ThatCouldNotBeComputed_IsNotWritten(string line, string says)
    {
        (await _session.RunAsync(line)).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain(says);
        File.Exists(_session.PathOf("plate.json")).ShouldBeFalse();
    }

    [Fact]
    public async Task Command_Misspelt_NamesTheNearestAndNothingElse()
    {
        (await _session.RunAsync("fil plate.json")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldBe("there is no command 'fil'.\nDid you mean fill?\n`infusionsim --help` shows what can be typed.\n");
    }

    [Fact]
    public async Task Plan_ToTheScreen_IsTheFileItself()
    {
        await _session.RunAsync("new disc 500 -o -");
        string onScreen = _session.Output;

        await _session.RunAsync("new disc 500 -o disc.json");

        _session.Read("disc.json").ReplaceLineEndings("\n").ShouldBe(onScreen);
    }

    [Fact]
    public async Task Size_InSeveralWords_IsOneSize() =>
        (await _session.RunAsync("new plate 600 x 400 -o plate.json")).ShouldBe(ExitCodes.Done, _session.Error);

    public void Dispose() => _session.Dispose();
}

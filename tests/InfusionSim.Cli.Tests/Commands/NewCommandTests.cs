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

using System.Text.Json;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class CompareCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Fact]
    public async Task Strips_OneTwiceAsLong_AreToldApart()
    {
        await WriteTwoStrips();

        (await _session.RunAsync("compare short.json long.json")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldContain("FILLS");
        _session.Output.ShouldContain("Gel margin");
        // 453 s and 1812 s by Darcy's law in one dimension.
        _session.Output.ShouldContain("It is full 23 min later: 30 min instead of 7.6 min.");
    }

    [Fact]
    public async Task Strips_OneWithAMeshAndABore_TellToolSideAndLineEnds()
    {
        await WriteTwoStrips();
        await _session.RunAsync("new strip 300x50 --mesh --set resolution.cellMm=5 --set feeds[0].boreMm=6 -o meshed.json");

        (await _session.RunAsync("compare short.json meshed.json")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldMatch("Tool side +- +up to ");
        _session.Output.ShouldMatch("Line ends +- +from [0-9.]+ % of the pressure");
    }

    [Fact]
    public async Task Plans_NoneMeetingItsGoals_EndWithOne()
    {
        await WriteTwoStrips();

        (await _session.RunAsync("compare short.json long.json --set goals.smallestGelMarginRatio=50")).ShouldBe(ExitCodes.GoalsNotMet);
    }

    [Fact]
    public async Task Plans_AsJson_AreAListOfForecasts()
    {
        await WriteTwoStrips();

        await _session.RunAsync("compare short.json long.json --json");

        using JsonDocument document = JsonDocument.Parse(_session.Output);
        document.RootElement.GetArrayLength().ShouldBe(2);
    }

    [Fact]
    public async Task Plans_AllWrong_AreToldTogether()
    {
        _session.Write("first.json", "{ \"titel\": \"a\" }");
        _session.Write("second.json", "");

        (await _session.RunAsync("compare first.json second.json third.json")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain("did you mean 'title'?");
        _session.Error.ShouldContain("The plan is empty");
        _session.Error.ShouldContain("third.json");
    }

    [Fact]
    public async Task Plan_Alone_IsSaidToBeTooFew()
    {
        await WriteTwoStrips();

        (await _session.RunAsync("compare short.json")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain("compare needs two plans or more; there is only");
    }

    [Fact]
    public async Task Picture_WithAnotherEnding_IsRefusedBeforeAnythingIsComputed()
    {
        (await _session.RunAsync("compare short.json long.json -o both.pdf")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain(".png or .svg");
    }

    public void Dispose() => _session.Dispose();

    private async Task WriteTwoStrips()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o short.json");
        await _session.RunAsync("new strip 600x50 --set resolution.cellMm=5 -o long.json");
    }
}

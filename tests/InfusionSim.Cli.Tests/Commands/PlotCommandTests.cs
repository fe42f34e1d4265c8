using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class PlotCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Theory]
    [InlineData("front", "picture.png")]
    [InlineData("front", "picture.svg")]
    [InlineData("pressure", "picture.png")]
    [InlineData("progress", "picture.svg")]
    [InlineData("strip", "picture.png")]
    [InlineData("animation", "picture.webp")]
    [InlineData("speed", "picture.png")]
    [InlineData("gel-margin", "picture.svg")]
    public async Task Picture_OfEachKind_IsWrittenAndSaid(string kind, string file)
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync($"plot strip.json --picture {kind} -o {file}")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldBe(_session.PathOf(file) + "\n");
        new FileInfo(_session.PathOf(file)).Length.ShouldBeGreaterThan(1000);
        _session.Error.Trim().Length.ShouldBeGreaterThan(20);
    }

    [Theory]
    [InlineData("tool-side", "mesh.json", "tool side")]
    [InlineData("both-sides", "mesh.json", "both sides")]
    [InlineData("lag", "mesh.json", "behind")]
    [InlineData("lines", "line.json", "far end")]
    public async Task Picture_OfALayUp_IsWrittenAndSaid(string kind, string plan, string says)
    {
        _session.Write("mesh.json", SamplePlans.Mesh());
        _session.Write("line.json", SamplePlans.Line());

        (await _session.RunAsync($"plot {plan} --picture {kind} -o picture.svg")).ShouldBe(ExitCodes.Done, _session.Error);

        new FileInfo(_session.PathOf("picture.svg")).Length.ShouldBeGreaterThan(1000);
        _session.Error.ShouldContain(says);
    }

    [Theory]
    [InlineData("--picture frnt -o picture.png", "Did you mean front?")]
    [InlineData("--picture toolside -o picture.png", "Did you mean tool-side?")]
    [InlineData("--picture tool-side -o picture.png", "has one layer")]
    [InlineData("--picture both-sides -o picture.png", "has one layer")]
    [InlineData("--picture lag -o picture.png", "has one layer")]
    [InlineData("--picture lines -o picture.png", "feeds[].boreMm")]
    [InlineData("--picture capillary -o picture.png", "resin.surfaceTensionMnPerM")]
    [InlineData("--picture front -o picture.webp", ".png or .svg")]
    [InlineData("--picture animation -o picture.png", ".webp")]
    [InlineData("--picture pressure --at 5mm -o picture.png", "'mm' measures a length")]
    [InlineData("--picture pressure --at -5min -o picture.png", "cannot lie before it")]
    public async Task Picture_ThatCannotBeDrawn_SaysWhatCan(string rest, string says)
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync($"plot strip.json {rest}")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain(says);
    }

    [Fact]
    public async Task Pressure_AfterTheEnd_SaysThatItShowsTheEnd()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("plot strip.json --picture pressure --at 90min -o picture.svg")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Error.ShouldContain("--at 90min is after the end of the forecast; the picture shows its end, 7.6 min.");
    }

    public void Dispose() => _session.Dispose();
}

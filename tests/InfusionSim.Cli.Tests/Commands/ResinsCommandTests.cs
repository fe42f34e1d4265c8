using System.Text.Json;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class ResinsCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Fact]
    public async Task Resins_OneTwiceAsThick_AreToldApart()
    {
        await WriteAsync();

        (await _session.RunAsync("resins strip.json quick.json calm.json")).ShouldBe(ExitCodes.Done, _session.Error);

        string[] lines = _session.Output.Split('\n');
        lines[0].ShouldContain("Gel margin");
        // 679 s at 0.15 Pa·s and 1812 s at 0.4 Pa·s on the 300 mm strip: φ μ L² / (2 K Δp), derived.
        lines[1].ShouldMatch(@"^1 Resin1 +FILLS +5\.7 min .* met$");
        lines[2].ShouldMatch(@"^2 Resin2 +FILLS +15 min .* met$");
        _session.Output.ShouldContain("Best     Resin1, the quickest to fill of the 2 that meet the goals: full 5.7 min after opening");
        _session.Error.ShouldContain("Caution");
    }

    [Fact]
    public async Task Resins_NoneMeetingTheGoals_EndWithOne()
    {
        await WriteAsync();

        (await _session.RunAsync("resins strip.json quick.json calm.json --set goals.smallestGelMarginRatio=90")).ShouldBe(ExitCodes.GoalsNotMet);

        _session.Output.ShouldContain("None     no resin meets the goals; Resin2 comes nearest");
    }

    [Fact]
    public async Task Resins_AsJson_AreTheAnswerOfTheContract()
    {
        await WriteAsync();

        await _session.RunAsync("resins strip.json quick.json calm.json --json");

        using JsonDocument document = JsonDocument.Parse(_session.Output);
        document.RootElement.GetProperty("resins").GetArrayLength().ShouldBe(2);
        document.RootElement.GetProperty("bestIndex").GetInt32().ShouldBe(0);
    }

    [Fact]
    public async Task Resins_WithAPicture_DrawIt()
    {
        await WriteAsync();

        (await _session.RunAsync("resins strip.json quick.json calm.json -o resins.svg")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Read("resins.svg").ShouldContain("1 Resin1");
    }

    [Theory]
    [InlineData("""{ "viscosity": 0.2, "gelTimeMin": 60, "densityKgPerM3": 1100 }""", "'viscosity' is not a key of the resin card; did you mean 'viscosityPaS'?")]
    [InlineData("""{ "viscosityPaS": 200, "gelTimeMin": 60, "densityKgPerM3": 1100 }""", "bad.json: viscosityPaS is 200 Pa·s")]
    [InlineData("[]", "must be a JSON object")]
    public async Task Resins_CardThatCannotBeUsed_SaysWhichAndWhy(string card, string says)
    {
        await WriteAsync();
        _session.Write("bad.json", card);

        (await _session.RunAsync("resins strip.json quick.json bad.json")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain(says);
        _session.Output.ShouldBeEmpty();
    }

    [Fact]
    public async Task Resins_CardThatIsNotThere_SaysWhatACardIs()
    {
        await WriteAsync();

        (await _session.RunAsync("resins strip.json nothing-like-it.json")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain("A card holds what stands under `resin` in a plan.");
    }

    public void Dispose() => _session.Dispose();

    private async Task WriteAsync()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");
        _session.Write("quick.json", SamplePlans.QuickResin);
        _session.Write("calm.json", SamplePlans.CalmResin);
    }
}

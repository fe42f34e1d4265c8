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
        lines[1].ShouldMatch(@"^1 quick +FILLS +5\.7 min .* met$");
        lines[2].ShouldMatch(@"^2 calm +FILLS +15 min .* met$");
        _session.Output.ShouldContain("Best     quick, the quickest to fill of the 2 that meet the goals: full 5.7 min after opening");
        _session.Error.ShouldContain("Caution");
    }

    [Fact]
    public async Task Resins_NoneMeetingTheGoals_EndWithOne()
    {
        await WriteAsync();

        (await _session.RunAsync("resins strip.json quick.json calm.json --set goals.smallestGelMarginRatio=90")).ShouldBe(ExitCodes.GoalsNotMet);

        _session.Output.ShouldContain("None     no resin meets the goals; calm comes nearest");
    }

    [Fact]
    public async Task Cards_OfTheSameName_AreToldApartByTheirFiles()
    {
        await WriteAsync();
        _session.Write("one.json", """{ "name": "Same", "viscosityPaS": 0.2, "gelTimeMin": 60, "densityKgPerM3": 1100 }""");
        _session.Write("two.json", """{ "name": "Same", "viscosityPaS": 0.3, "gelTimeMin": 60, "densityKgPerM3": 1100 }""");

        (await _session.RunAsync("resins strip.json one.json two.json")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldContain("1 Same (one)");
        _session.Output.ShouldContain("Best     Same (one)");
    }

    [Fact]
    public async Task PlanAndCards_AllWrong_AreToldTogether()
    {
        _session.Write("plan.json", "{ \"titel\": \"a\" }");
        _session.Write("one.json", """{ "viscosity": 0.2 }""");
        _session.Write("two.csv", "a;b\n1;2\n");

        (await _session.RunAsync("resins plan.json one.json two.csv three.json")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain("did you mean 'title'?");
        _session.Error.ShouldContain("did you mean 'viscosityPaS'?");
        _session.Error.ShouldContain("two.csv, line 1");
        _session.Error.ShouldContain("three.json");
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

        _session.Read("resins.svg").ShouldContain("1 quick");
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
    public async Task Resins_MeasuredCurve_TakesTheRestFromThePlan()
    {
        await WriteAsync();
        _session.Write("cup.csv", "minutes, viscosity [mPa.s]\n0, 200\n30, 400\n60, 900\n");

        (await _session.RunAsync("resins strip.json quick.json cup.csv")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.Split('\n')[2].ShouldMatch(@"^2 cup +FILLS .* 0\.2\d? to 0\.\d+ Pa·s .* met$");
    }

    [Fact]
    public async Task Resins_CardWithANameAndATable_AreCalledByItAndAskedForTheirBestTemperature()
    {
        await WriteAsync();
        _session.Write("warm.json", """
            { "name": "Warm one", "viscosityTemperatures": [ { "degC": 15, "viscosityPaS": 0.4 }, { "degC": 30, "viscosityPaS": 0.17 } ],
              "gelTimeMin": 120, "gelTimeAtDegC": 25, "gelTimeActivationKjPerMol": 55, "densityKgPerM3": 1120 }
            """);

        (await _session.RunAsync("resins strip.json warm.json")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldContain("Best     Warm one meets the goals: full ");
        // Gel at 25 °C with 55 kJ/mol comes 1.8 times sooner at 30 °C and still long after the fill: the warmest is the quickest.
        _session.Output.ShouldContain("Warmth   Warm one: quickest to fill at 30 °C, as warm as the card goes, with the margin");
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

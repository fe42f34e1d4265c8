using System.Text.Json;
using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class FillCommandTests : IDisposable
{
    private readonly CommandSession _session = new();

    [Fact]
    public async Task Plate_Fill_AnswersLineByLine()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        int code = await _session.RunAsync("fill strip.json");

        code.ShouldBe(ExitCodes.Done, _session.Error);
        string[] lines = _session.Output.TrimEnd().Split('\n');
        lines.Select(line => line.Split(' ')[0]).ShouldBe(["FILLS", "Gel", "Last", "Vent", "Bleed", "Air", "Resin", "Sure?", "Next"]);
        lines[2].ShouldContain("the right edge");
        _session.Error.ShouldContain(Cautions.Line);
    }

    [Fact]
    public async Task Plate_FillAsJson_IsTheForecastAndNothingElse()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("fill strip.json --json")).ShouldBe(ExitCodes.Done, _session.Error);

        using JsonDocument document = JsonDocument.Parse(_session.Output);
        document.RootElement.GetProperty("outcome").GetString().ShouldBe("OUTCOME_FILLS");
        // Darcy's law in one dimension, derived: φ μ L² / (2 K Δp).
        double expected = 0.5 * 0.2 * 0.09 / (2 * 1e-10 * 99325);
        document.RootElement.GetProperty("fillTimeS").GetDouble().ShouldBe(expected, 1e-6 * expected);
        document.RootElement.GetProperty("drySpots").GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public async Task Setting_OfTheViscosity_ChangesTheTimeInProportion()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        await _session.RunAsync("fill strip.json --json");
        double thin = FillTime();
        await _session.RunAsync("fill strip.json --json --set resin.viscosityPaS=400mPa.s");

        FillTime().ShouldBe(2 * thin, 1e-9 * thin);
        _session.Error.ShouldContain("resin.viscosityPaS = 0.4 Pa·s");
    }

    [Theory]
    [InlineData("resin.gelTimeMin=7", "GELS FIRST")]
    [InlineData("goals.smallestGelMarginRatio=90", "FILLS")]
    public async Task Goals_NotMet_EndWithOne(string setting, string outcome)
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        int code = await _session.RunAsync($"fill strip.json --set {setting}");

        code.ShouldBe(ExitCodes.GoalsNotMet, _session.Error);
        _session.Output.ShouldStartWith(outcome);
    }

    [Fact]
    public async Task Plan_OutOfRange_NamesEveryFaultAndEndsWithTwo()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        int code = await _session.RunAsync("fill strip.json --set preform.zones[0].porosity=1.2 --set resin.viscosityPaS=300");

        code.ShouldBe(ExitCodes.BadInput);
        _session.Output.ShouldBeEmpty();
        _session.Error.ShouldContain("2 things to put right");
        _session.Error.ShouldContain("per cent");
        _session.Error.ShouldContain("300 mPa·s is 0.3");
    }

    [Fact]
    public async Task Server_NotThere_EndsWithThree()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("fill strip.json --server http://127.0.0.1:9")).ShouldBe(ExitCodes.NoService);

        _session.Error.ShouldContain("no service answers at http://127.0.0.1:9");
    }

    [Fact]
    public async Task Server_AddressThatIsNone_EndsWithTwo()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("fill strip.json --server ftp://here")).ShouldBe(ExitCodes.BadInput);
    }

    [Fact]
    public async Task Run_Stopped_EndsAsInterrupted()
    {
        await _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json");

        (await _session.RunAsync("fill strip.json", new CancellationToken(canceled: true))).ShouldBe(130);

        _session.Output.ShouldBeEmpty();
    }

    public void Dispose() => _session.Dispose();

    private double FillTime()
    {
        using JsonDocument document = JsonDocument.Parse(_session.Output);
        return document.RootElement.GetProperty("fillTimeS").GetDouble();
    }
}

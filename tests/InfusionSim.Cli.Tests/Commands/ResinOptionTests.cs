using System.Text.Json;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

/// <summary>`--resin`: another card, or a measured curve, in place of the plan's resin. All cards are invented.</summary>
public sealed class ResinOptionTests : IDisposable
{
    private const string Card = """
        { "name": "Calm", "viscosityTemperatures": [ {"degC":15,"viscosityPaS":0.604111}, {"degC":25,"viscosityPaS":0.3}, {"degC":40,"viscosityPaS":0.114165} ],
          "gelTimeMin": 150, "gelTimeAtDegC": 25, "gelTimeMassG": 100, "densityKgPerM3": 1100, "source": "invented" }
        """;

    private readonly CommandSession _session = new();

    public ResinOptionTests() => _session.RunAsync("new strip 300x50 --set resolution.cellMm=5 -o strip.json").GetAwaiter().GetResult();

    // φμL²/(2KΔp) of the strip with 0.215102 Pa·s, the card's viscosity at 30 °C (by E = 50 kJ/mol).
    [Fact]
    public async Task Card_AtTheShopsTemperature_FillsAsItsViscositySays()
    {
        _session.Write("calm.json", Card);

        (await _session.RunAsync("fill strip.json --resin calm.json --set shop.temperatureDegC=30degC --json")).ShouldBe(ExitCodes.Done, _session.Error);

        using JsonDocument document = JsonDocument.Parse(_session.Output);
        double expected = 0.5 * 0.215102 * 0.09 / (2 * 1e-10 * 99325);
        document.RootElement.GetProperty("fillTimeS").GetDouble().ShouldBe(expected, 1e-5 * expected);
        document.RootElement.GetProperty("gelTimeS").GetDouble().ShouldBe(60 * 150 / Math.Sqrt(2) - 360, 0.01);
        document.RootElement.GetProperty("resin").GetProperty("temperatureAtOpeningDegC").GetDouble().ShouldBe(30);
    }

    [Fact]
    public async Task Card_InWords_SaysWhereItsNumbersComeFrom()
    {
        _session.Write("calm.json", Card);

        (await _session.RunAsync("fill strip.json --resin calm.json --set shop.temperatureDegC=20")).ShouldBe(ExitCodes.Done, _session.Error);

        _session.Output.ShouldContain("Calm: 420 mPa·s at opening; 20 °C");
        _session.Output.ShouldContain("viscosity from a line through 3 temperatures, 15 to 40 °C");
        _session.Output.ShouldContain("gel time of a cup of 100 g, which warms itself: thin cloth on a tool gels later, so the cup's figure is the cautious one");
        _session.Output.ShouldContain("gel time at 25 °C carried to 20 °C: it halves for every 10 °C warmer (common practice)");
        _session.Output.ShouldContain("numbers from: invented");
    }

    [Theory]
    [InlineData("minutes, viscosity [mPa.s]\n0, 200\n20, 300\n60, 2000\n")]
    [InlineData("\uFEFFminutes;viscosity (Pa·s)\n0;0,2\n20;0,3\n60;2,0\n")]
    [InlineData("# a cup, invented\nmin\tviscosity cP\n0\t200\n20\t300\n\n60\t2000")]
    public async Task Curve_OfAnyOrdinaryShape_TakesTheRestFromThePlan(string csv)
    {
        _session.Write("cup.csv", csv);

        (await _session.RunAsync("fill strip.json --resin cup.csv --set resin.mixToOpenMin=20 --json")).ShouldBe(ExitCodes.Done, _session.Error);

        using JsonDocument document = JsonDocument.Parse(_session.Output);
        document.RootElement.GetProperty("resin").GetProperty("viscosityAtOpeningPaS").GetDouble().ShouldBe(0.3, 1e-9);
        document.RootElement.GetProperty("gelTimeS").GetDouble().ShouldBe(2400);
    }

    [Theory]
    [InlineData("0, 200\n20, 300\n", "line 1")]
    [InlineData("minutes, viscosity\n0, 200\n20, 300\n", "viscosity with its unit")]
    [InlineData("minutes, viscosity [mPa.s]\n0, 200\nlater, 300\n", "line 3: \"later, 300\" is not two numbers")]
    [InlineData("", "is empty")]
    [InlineData("minutes, viscosity [mPa.s]\n0, 200\n20, 150\n60, 300\n", "resin.viscosityCurve.points[1].viscosityPaS")]
    public async Task Curve_ThatCannotBeUsed_IsRefusedWithItsLine(string csv, string says)
    {
        _session.Write("cup.csv", csv);

        (await _session.RunAsync("fill strip.json --resin cup.csv")).ShouldBe(ExitCodes.BadInput);

        _session.Error.ShouldContain(says);
    }

    [Fact]
    public async Task Card_ThatIsNotThere_IsRefused()
    {
        (await _session.RunAsync("fill strip.json --resin none.json")).ShouldBe(ExitCodes.BadInput);
        _session.Error.ShouldContain("there is no file");
    }

    public void Dispose() => _session.Dispose();
}

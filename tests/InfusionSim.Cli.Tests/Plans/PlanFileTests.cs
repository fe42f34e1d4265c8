using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Plans;
using InfusionSim.Cli.Shapes;

namespace InfusionSim.Cli.Tests.Plans;

public sealed class PlanFileTests : IDisposable
{
    private readonly CommandSession _session = new();
    private readonly StringWriter _understood = new();

    [Fact]
    public void File_Misspelt_NamesTheNearest()
    {
        _session.Write("plate.json", "{}");

        Fail("plat.json").ShouldContain($"Did you mean {_session.PathOf("plate.json")}?");
    }

    [Fact]
    public void File_LikeNoOther_IsNotTakenForOne()
    {
        _session.Write("c2.json", "{}");

        Fail("deck.json").ShouldContain("infusionsim new plate 600x400 -o");
    }

    [Fact]
    public void File_NotThere_SaysHowToMakeOne() => Fail("plate.json").ShouldContain("infusionsim new plate 600x400 -o");

    [Fact]
    public void File_ThatIsAFolder_SaysSo() =>
        Should.Throw<CommandException>(() => PlanFile.Read(_session.Folder, [], _understood)).Message.ShouldContain("is a folder");

    [Fact]
    public void Key_Misspelt_NamesPlaceAndNearest()
    {
        _session.Write("plate.json", PlanText.Of(FirstPlan.Of("plate", "600x400")).Replace("viscosityPaS", "viscosityPas", StringComparison.Ordinal));

        string says = Fail("plate.json");

        says.ShouldContain("viscosityPas");
        says.ShouldContain("viscosityPaS");
    }

    [Fact]
    public void Faults_OfReadingAndOfChecking_AreToldTogether()
    {
        string text = PlanText.Of(FirstPlan.Of("plate", "600x400")).Replace("\"thicknessMm\": 3", "\"thicknesMm\": 3", StringComparison.Ordinal)
            .Replace("\"porosity\": 0.5", "\"porosity\": 1.2", StringComparison.Ordinal);
        _session.Write("plate.json", text);

        string says = Fail("plate.json");

        says.ShouldContain("thicknesMm");
        says.ShouldContain("1.2");
    }

    [Theory]
    [InlineData("bag.pressureMbarAbs=-0.7bar(g)", "shop.altitudeM=2000")]
    [InlineData("shop.altitudeM=2000", "bag.pressureMbarAbs=-0.7bar(g)")]
    public void Settings_GaugeAndHeight_CountFromTheAirUpThere(string first, string second)
    {
        _session.Write("plate.json", PlanText.Of(FirstPlan.Of("plate", "600x400")));

        // Source: 795 mbar at 2000 m, ISO 2533.
        PlanFile.Read(_session.PathOf("plate.json"), [first, second], _understood).Bag.PressureMbarAbs.ShouldBe(94.952, 1e-3);

        _understood.ToString().ReplaceLineEndings("\n").ShouldBe(
            "Set      shop.altitudeM = 2000 m (in place of bag.ambientMbarAbs: 794.952 mbar of air)\n"
            + "Set      bag.pressureMbarAbs = 94.952 mbar absolute (gauge -700 mbar with 794.952 mbar of air)\n");
    }

    [Fact]
    public void Settings_BarometerBesideHeight_CountsFirst()
    {
        _session.Write("plate.json", PlanText.Of(FirstPlan.Of("plate", "600x400")));

        PlanFile.Read(_session.PathOf("plate.json"), ["bag.pressureMbarAbs=-0.7bar(g)", "bag.ambientMbarAbs=780", "shop.altitudeM=2000"], _understood).Bag.PressureMbarAbs.ShouldBe(80, 1e-9);
    }

    [Fact]
    public void Settings_GaugeDeeperThanTheAirUpThere_IsRefused()
    {
        _session.Write("plate.json", PlanText.Of(FirstPlan.Of("plate", "600x400")));

        CommandException refused = Should.Throw<CommandException>(() => PlanFile.Read(_session.PathOf("plate.json"), ["bag.pressureMbarAbs=-0.95bar(g)", "shop.altitudeM=1000"], _understood));

        refused.Message.ShouldContain("gauge -950 mbar with 898.746");
        refused.Message.ShouldContain("deeper than a perfect vacuum");
    }

    [Fact]
    public void Settings_Several_AreAllEchoed()
    {
        _session.Write("plate.json", PlanText.Of(FirstPlan.Of("plate", "600x400")));

        PlanFile.Read(_session.PathOf("plate.json"), ["resin.viscosityPaS=300mPa.s", "resin.gelTimeMin=1.5h"], _understood);

        _understood.ToString().ReplaceLineEndings("\n").ShouldBe("Set      resin.viscosityPaS = 0.3 Pa·s\nSet      resin.gelTimeMin = 90 min\n");
    }

    [Fact]
    public void Settings_SeveralWrong_AreAllToldAtOnce()
    {
        _session.Write("plate.json", PlanText.Of(FirstPlan.Of("plate", "600x400")));

        CommandException failure = Should.Throw<CommandException>(() => PlanFile.Read(_session.PathOf("plate.json"), ["resin.viscosity=1", "bag.pressure=1"], _understood));

        failure.Lines.Count.ShouldBe(2);
        failure.ExitCode.ShouldBe(ExitCodes.BadInput);
    }

    public void Dispose()
    {
        _session.Dispose();
        _understood.Dispose();
    }

    private string Fail(string name) =>
        Should.Throw<CommandException>(() => PlanFile.Read(_session.PathOf(name), [], _understood)).Message;
}

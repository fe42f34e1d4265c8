using System.Text.Json;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Tests.Commands;

public sealed class MixCommandTests
{
    private static async Task<CommandSession> WithPlateAsync()
    {
        CommandSession session = new();
        await session.RunAsync("new strip 600x400 --set resolution.cellMm=20 -o plate.json");
        return session;
    }

    // 600 × 400 × 3 mm at porosity 0.5 drink 396 g; 15 % and 100 g more are 555.4 g.
    [Fact]
    public async Task Mix_PlanWithARatio_TellsGramsOfBoth()
    {
        using CommandSession session = await WithPlateAsync();

        (await session.RunAsync("mix plate.json --set resin.mixRatio.partsByMass=25")).ShouldBe(ExitCodes.Done, session.Error);

        session.Output.ShouldStartWith("MIX      555 g: 444 g of resin and 111 g of hardener\nWhere    396 g in the part");
        session.Output.ShouldContain("Caution  Your data sheet and local rules prevail");
        session.Error.ShouldContain("Set      resin.mixRatio.partsByMass = 25");
    }

    [Fact]
    public async Task Mix_Json_IsTheSheetAlone()
    {
        using CommandSession session = await WithPlateAsync();

        (await session.RunAsync("mix plate.json --json --set mix.potRestG=0.05kg")).ShouldBe(ExitCodes.Done, session.Error);

        JsonElement sheet = JsonDocument.Parse(session.Output).RootElement;
        sheet.GetProperty("all").GetProperty("mixedG").GetDouble().ShouldBe(505.4, 1e-6);
        sheet.GetProperty("all").TryGetProperty("resinG", out _).ShouldBeFalse();
        sheet.GetProperty("cautions").GetArrayLength().ShouldBe(5);
    }

    [Fact]
    public async Task Mix_PlanThatGelsFirst_TellsTheWeightsAndEndsWithOne()
    {
        using CommandSession session = await WithPlateAsync();

        (await session.RunAsync("mix plate.json --set resin.gelTimeMin=15")).ShouldBe(ExitCodes.GoalsNotMet, session.Error);

        session.Output.ShouldStartWith("MIX      555 g");
        session.Output.ShouldContain("Fill     GELS FIRST");
    }

    [Fact]
    public async Task Mix_ResinWhosePotGetsWarm_IsDividedIntoBatchesThatStayCool()
    {
        using CommandSession session = new();
        session.Write("tray.json", SamplePlans.Mix());

        (await session.RunAsync("mix tray.json")).ShouldBe(ExitCodes.Done, session.Error);
        string cool = session.Output;
        (await session.RunAsync("mix tray.json --set mix.largestBatchG=5kg --set mix.warmestPotDegC=25")).ShouldBe(ExitCodes.Done, session.Error);
        string warm = session.Output;

        cool.ShouldContain("Pour     2 batches of ");
        cool.ShouldContain("in the pot after opening: batch 2 by ");
        cool.ShouldContain("runs away: above 200 °C");
        warm.ShouldContain("Pour     all at once");
        string.Join(' ', warm.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).ShouldContain("above the 25 °C that you allow");
    }

    [Fact]
    public async Task Mix_RatioByVolumeWithoutDensities_IsRefusedWithItsPath()
    {
        using CommandSession session = await WithPlateAsync();

        (await session.RunAsync("mix plate.json --set resin.mixRatio.partsByVolume=40")).ShouldBe(ExitCodes.BadInput);

        session.Output.ShouldBeEmpty();
        session.Error.ShouldContain("resin.mixRatio.hardenerDensityKgPerM3");
    }
}

using InfusionSim.Cli.Commands;
using InfusionSim.Protocol.Json;
using InfusionSim.Service.Tests.Fills;
using InfusionSim.Service.Tests.Transport;

namespace InfusionSim.Cli.Tests.Commands;

/// <summary>The slips that the service refuses, typed into a plan file.</summary>
public sealed class BadPlanTests
{
    /// <summary>Slips that JSON can hold: it has no infinity and nothing that is not a number.</summary>
    public static TheoryData<string> Slips => [.. BadPlans.All.Where(slip => slip.Value.FitsJson).Select(slip => slip.Key)];

    [Theory]
    [MemberData(nameof(Slips))]
    public async Task Fill_BadPlan_NamesThePlaceAndEndsWithTwo(string slip)
    {
        using CommandSession session = new();
        session.Write("plan.json", MessageWriter.WriteGiven(StraightStrip.With(BadPlans.All[slip].Change)));

        int code = await session.RunAsync("fill plan.json");

        code.ShouldBe(ExitCodes.BadInput, session.Error);
        session.Output.ShouldBeEmpty();
        session.Error.ShouldContain(BadPlans.All[slip].Path);
    }
}

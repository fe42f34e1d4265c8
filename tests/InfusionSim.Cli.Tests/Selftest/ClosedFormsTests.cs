using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Selftest;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Cli.Tests.Selftest;

public sealed class ClosedFormsTests
{
    public static TheoryData<string> Names => [.. ClosedForms.All.Select(check => check.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Check_OnEveryGrid_IsASoundPlan(string name)
    {
        ClosedForm check = ClosedForms.All.Single(one => one.Name == name);
        foreach (int across in SelftestResult.Across) PlanChecker.Check(check.DrawOn(across)).Faults.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("strip 500 mm, fed at its end", 1250)]
    [InlineData("the same strip, half way", 312.5)]
    [InlineData("disc Ø 1 m, fed all round", 625)]
    [InlineData("the same disc, half way in", 252.1415)]
    [InlineData("rectangle 600 x 400, fed all round", 161.2342)]
    [InlineData("ellipse 600 x 400, fed all round", 138.4615)]
    [InlineData("triangle 500 mm, fed all round", 69.44444)]
    [InlineData("mesh on a strip of 1 m, open through", 712.1212)]
    [InlineData("square 500 mm behind a hose of 2 m", 1266.9208)]
    [InlineData("upright strip of 1 m, fed at its foot", 5391.43)]
    [InlineData("feed line of 2 m, pressure at its end", 0.780532)]
    [InlineData("mesh that runs ahead, by how far", 45.5383)]
    [InlineData("strip fed at both ends, vent shuts", 51.02041)]
    [InlineData("the same strip, air that stays", 6)]
    [InlineData("strip without a vent, front at 450 mm", 1249.652)]
    [InlineData("strip, resin that thickens", 1961.659)]
    [InlineData("strip, resin that thickens twice as fast", 447.2136)]
    public void Formula_OfEachCheck_GivesTheTabledNumber(string name, double number) =>
        ClosedForms.All.Single(check => check.Name == name).Expected.ShouldBe(number, 1e-6 * number);

    [Theory]
    [InlineData(0.04, 0.02, 0.01, 0.005, 1.0)]
    [InlineData(0.064, 0.016, 0.004, 0.001, 2.0)]
    public void Order_OfErrorsThatHalve_IsCounted(double a, double b, double c, double d, double order) =>
        new SelftestResult(ClosedForms.All[0], [a, b, c, d]).Order.ShouldBe(order, 1e-9);

    [Theory]
    [InlineData(0.004, 0.003, 0.0029, 0.0028, false)]
    [InlineData(0.01, 0.005, 0.0025, 0.00125, true)]
    [InlineData(0.1, 0.05, 0.025, 0.0125, false)]
    [InlineData(1e-9, 1e-9, 1e-9, 1e-9, true)]
    [InlineData(0.01, 0.005, double.NaN, 0.00125, false)]
    public void Verdict_OfErrors_AsksForSizeAndOrder(double a, double b, double c, double d, bool passes) =>
        new SelftestResult(ClosedForms.All[4], [a, b, c, d]).Passes.ShouldBe(passes);

    [Theory]
    [InlineData(2e-6, 1e-6, 3e-6, 4e-6, true)]
    [InlineData(2e-6, 1e-6, 3e-6, 4e-5, false)]
    public void Verdict_OfErrorsBelowTheFloorOfTheFormula_AsksForNoOrder(double a, double b, double c, double d, bool passes) =>
        new SelftestResult(ClosedForms.All[0] with { Floor = 1e-5, MostError = 1e-4 }, [a, b, c, d]).Passes.ShouldBe(passes);

    [Fact, Trait("Speed", "Slow")]
    public async Task Selftest_OfThisProgram_Passes()
    {
        using CommandSession session = new();

        (await session.RunAsync("selftest")).ShouldBe(ExitCodes.Done, session.Output + session.Error);

        session.Output.ShouldContain($"All {ClosedForms.All.Count} as they should be.");
    }
}

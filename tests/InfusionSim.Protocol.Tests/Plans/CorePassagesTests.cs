using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class CorePassagesTests
{
    private static Core Plain(double depthMm, double share = 0.5) => new()
    {
        ThicknessMm = 10,
        ToolSkinFraction = share,
        Grooves = new Grooves { WidthMm = 1, DepthMm = depthMm, PitchMm = 20 },
    };

    private static IReadOnlyList<Fault> FaultsOf(params Core[] cores)
    {
        InfusionPlan plan = PlanChecker.Check(StraightStrip.With(given => given.Cores.Add(cores))).Plan;
        var faults = new FaultList();
        CorePassages.Run(plan, faults);
        return faults.ToList();
    }

    [Fact]
    public void Check_GroovesWithoutHoles_AreNotComputed() =>
        FaultsOf(Plain(2)).ShouldHaveSingleItem().ShouldBe(new Fault(
            "cores[0].grooves",
            "core 'Core1' has grooves and no holes; this version computes grooves only where holes join the two skins, or slits as deep as the core. Give holes, or depthMm as thicknessMm.",
            ErrorReason.NotComputedYet));

    [Fact]
    public void Check_Slits_AreSound() => FaultsOf(Plain(10)).ShouldBeEmpty();

    [Fact]
    public void Check_CoresAtTwoHeights_AreNotComputed() =>
        FaultsOf(Plain(10), Plain(10, 0.3)).ShouldHaveSingleItem().ShouldBe(new Fault(
            "cores[1].toolSkinFraction",
            "core 'Core2' lies above 0.3 of the lay-up and core 'Core1' above 0.5; this version computes cores at one height only. Give all of them one toolSkinFraction.",
            ErrorReason.NotComputedYet));
}

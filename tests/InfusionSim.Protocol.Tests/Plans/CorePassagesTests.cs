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
    public void Check_GroovesAsDeepAsTheCore_AreSound() => FaultsOf(Plain(10)).ShouldBeEmpty();

    [Fact]
    public void Check_CoresAtTwoHeights_AreNotComputed() =>
        FaultsOf(Plain(10), Plain(10, 0.3)).ShouldHaveSingleItem().ShouldBe(new Fault(
            "cores[1].toolSkinFraction",
            "core 'Core2' lies above 0.3 of the lay-up and core 'Core1' above 0.5; this version computes cores at one height only. Give all of them one toolSkinFraction.",
            ErrorReason.NotComputedYet));
}

using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class NotComputedTests
{
    [Fact]
    public void Clamps_OnASlope_AreComputed()
    {
        InfusionPlan plan = StraightStrip.Plan();
        plan.Slope = new Slope { AngleDeg = 30 };
        plan.Vents[0].Shuts = new Moment { WhenFull = true };
        PlanChecker.Check(plan).IsSound.ShouldBeTrue();
    }

    [Fact]
    public void Clamps_WithAPotAtAnotherLevel_AreComputed()
    {
        InfusionPlan plan = StraightStrip.Plan();
        plan.Pots.Add(new Pot { Name = "P", LevelMm = -500 });
        plan.Feeds[0].Pot = "P";
        plan.Vents[0].Shuts = new Moment { WhenFull = true };
        PlanChecker.Check(plan).IsSound.ShouldBeTrue();
    }

    [Fact]
    public void Clamps_OnALevelPanel_AreComputed()
    {
        InfusionPlan plan = StraightStrip.Plan();
        plan.Vents[0].Shuts = new Moment { WhenFull = true };
        PlanChecker.Check(plan).IsSound.ShouldBeTrue();
    }
}

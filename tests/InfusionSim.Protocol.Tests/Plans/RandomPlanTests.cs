using System.Diagnostics;
using CsCheck;
using InfusionSim.Physics.Flow;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class RandomPlanTests
{
    [Fact]
    public void Check_AnyPlan_EndsWithAnAnswer() => RandomPlans.Any.Sample(plan =>
    {
        var clock = Stopwatch.StartNew();
        PlanCheck check = PlanChecker.Check(plan);

        clock.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(10));
        if (check.IsSound) PlanMapping.ToInputs(check);
        foreach (Faults.Fault fault in check.Faults) fault.Text.Any(letter => char.IsControl(letter)).ShouldBeFalse(fault.Text);
    }, iter: 3000);

    [Fact]
    public void Check_PlanFoundSound_CanBeCut() => RandomPlans.Any.Sample(plan =>
    {
        plan.Resolution = new V1.Resolution { CellMm = 25 };
        PlanCheck check = PlanChecker.Check(plan);
        if (!check.IsSound) return;
        FillProblemBuilder.Build(PlanMapping.ToInputs(check).Panel).PoreVolume.Sum().ShouldBeGreaterThan(0);
    }, iter: 3000);

    [Fact]
    public void Check_ItsOwnResult_FindsNothingNew() => RandomPlans.Any.Sample(plan =>
    {
        PlanCheck check = PlanChecker.Check(plan);
        if (check.IsSound) PlanChecker.Check(check.Plan).ShouldSatisfyAllConditions(again => again.Faults.ShouldBeEmpty(), again => again.Plan.ShouldBe(check.Plan));
    }, iter: 1000);
}

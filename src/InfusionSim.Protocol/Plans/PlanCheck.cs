using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>A plan with what the check of it brought to light.</summary>
/// <param name="Plan">The plan with every default filled in; the plan given is not changed.</param>
/// <param name="Faults">Everything that keeps it from being computed; empty for a sound plan.</param>
/// <param name="Warnings">Readings that look odd but can be computed.</param>
public sealed record PlanCheck(InfusionPlan Plan, IReadOnlyList<Fault> Faults, IReadOnlyList<string> Warnings)
{
    /// <summary>Whether it can be computed.</summary>
    public bool IsSound => Faults.Count == 0;
}

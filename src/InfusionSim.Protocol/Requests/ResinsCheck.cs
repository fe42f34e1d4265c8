using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Protocol.Requests;

/// <summary>A question about several resins with what the check of it brought to light.</summary>
/// <param name="Cards">The plan with each card in the place of its resin, in the order of the cards; empty where there is nothing to compare.</param>
/// <param name="Faults">Everything that keeps it from being computed; empty for a sound question.</param>
/// <param name="Warnings">Readings that look odd but can be computed.</param>
public sealed record ResinsCheck(IReadOnlyList<PlanCheck> Cards, IReadOnlyList<Fault> Faults, IReadOnlyList<string> Warnings)
{
    /// <summary>Whether it can be computed.</summary>
    public bool IsSound => Faults.Count == 0;
}

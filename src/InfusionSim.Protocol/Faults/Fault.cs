using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Faults;

/// <summary>One thing in a request that keeps it from being computed, said so that the reader knows what to do.</summary>
/// <param name="Path">Where it stands, as proto-JSON names it, from the plan's root: preform.zones[0].porosity; empty when it concerns the whole.</param>
/// <param name="Text">What, its value with its unit, the allowed range, what to do.</param>
/// <param name="Reason">Why it is refused.</param>
public sealed record Fault(string Path, string Text, ErrorReason Reason = ErrorReason.PlanInvalid);

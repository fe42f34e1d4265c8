using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Client;

/// <summary>A plan with what to call it on screens: its file, as it was typed.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Plan">The plan.</param>
public sealed record NamedPlan(string Name, InfusionPlan Plan);

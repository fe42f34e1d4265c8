using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>A stretch of a fill against or with gravity, followed to its end: enough to find any state of it in one solve.</summary>
/// <param name="Problem">The problem with the ways shut that lead above the height the resin climbs to.</param>
/// <param name="Climbed">Nodes that the resin can climb to, or that it fills already. [nodes].</param>
/// <param name="Start">The panel as the stretch begins.</param>
/// <param name="Load">What weight moves, with the clock at which each node is full.</param>
/// <param name="Total">How it ends.</param>
internal sealed record GravityFill(FillProblem Problem, bool[] Climbed, FillStart Start, GravityLoad Load, FillTotal Total)
{
    /// <summary>Why it could not be followed any further; null when it came to its end.</summary>
    public ResinRunsBackException? Stopped { get; init; }

    /// <summary>A marcher at the start, for states in any order.</summary>
    public FillMarcher NewMarcher() => new(Problem, Climbed, Load, Start);
}

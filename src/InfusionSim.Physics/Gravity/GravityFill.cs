using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>A fill against or with gravity, followed from the opening of the feeds to its end: enough to find any state of it in one solve.</summary>
/// <param name="Problem">The problem with the ways shut that lead above the height the resin climbs to.</param>
/// <param name="Climbed">Nodes that the resin can climb to. [nodes].</param>
/// <param name="Load">What weight moves, with the clock at which each node is full.</param>
/// <param name="Total">How the fill ends.</param>
internal sealed record GravityFill(FillProblem Problem, bool[] Climbed, GravityLoad Load, FillTotal Total)
{
    /// <summary>A marcher with a dry panel, for states in any order.</summary>
    public FillMarcher NewMarcher() => new(Problem, Climbed, Load);
}

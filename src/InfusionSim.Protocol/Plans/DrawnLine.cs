using InfusionSim.Physics.Panels;

namespace InfusionSim.Protocol.Plans;

/// <summary>A feed or vent as drawn, with what a message calls it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="What">feed or vent.</param>
/// <param name="Place">Where it stands in the plan: feeds[0].</param>
/// <param name="Path">Where it lies [m].</param>
/// <param name="ContactWidth">Width or diameter where it touches the cloth [m].</param>
internal sealed record DrawnLine(string Name, string What, string Place, LinePath Path, double ContactWidth)
{
    /// <summary>Whether it must lie on the cloth all along: a gap whose height the cloth beside it tells.</summary>
    public bool StaysOnCloth { get; init; }
}

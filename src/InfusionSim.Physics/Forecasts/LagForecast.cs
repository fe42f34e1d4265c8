using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Forecasts;

/// <summary>How far the tool side stays behind what one sees through the bag.</summary>
/// <param name="LargestLag">Longest time between the front on the bag side and the front on the mould under it [s]; where the mould stays dry it
/// counts up to the end; 0 when it is nowhere behind.</param>
/// <param name="At">Where that is [m]; null when the tool side is nowhere behind.</param>
/// <param name="Length">How far the front on the mould trails the one on the bag side [m]: the median over the panel; null when it is nowhere behind.</param>
/// <param name="ExpectedLength">Lag of a straight front under the mesh in closed form [m], the longest of all meshes and zones; null without a mesh.</param>
/// <param name="MeshToVent">Smallest distance from a mesh on the bag side to a vent [m], 0 when it lies under one; null without such a mesh or
/// without a vent.</param>
public sealed record LagForecast(double LargestLag, Point2? At, double? Length, double? ExpectedLength, double? MeshToVent)
{
    /// <summary>
    /// Share of the time to the end that a lag may last before it is a finding [-]: a tenth, the lag at which one layer stops telling the story (our
    /// choice; common practice asks that resin at the vent means resin everywhere).
    /// </summary>
    public const double LargestShareOfEnd = 0.1;

    /// <summary>
    /// How far from the vent a mesh on the bag side should stop [m], so that the tool side catches up: the lag, expected or found, whichever is
    /// longer (common practice); null without a mesh on the bag side, and where it is longer than half the panel's diagonal: no room is left to catch up.
    /// </summary>
    public double? StopBeforeVent { get; init; }

    /// <summary>Whether the mesh stops that far from every vent; null without such a mesh or without a vent.</summary>
    public bool? StopsInTime => MeshToVent is double distance && StopBeforeVent is double asked ? distance >= asked : null;

    /// <summary>Whether it is worth a finding.</summary>
    /// <param name="endTime">When the fill ends [s].</param>
    public bool IsBehind(double endTime) => LargestLag > LargestShareOfEnd * endTime;
}

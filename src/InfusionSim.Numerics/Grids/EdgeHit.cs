using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>Where a straight way meets the outline or a cut-out.</summary>
/// <param name="Share">How far along the way [-], 0 to 1.</param>
/// <param name="Start">Where the edge it meets begins [m].</param>
/// <param name="End">Where that edge ends [m].</param>
public readonly record struct EdgeHit(double Share, Point2 Start, Point2 End);

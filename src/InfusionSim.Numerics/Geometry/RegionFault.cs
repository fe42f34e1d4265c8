namespace InfusionSim.Numerics.Geometry;

/// <summary>One fault of a drawn region.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="RingIndex">The ring: 0 for the outline, 1 for the first cut-out and so on.</param>
/// <param name="OtherRing">The ring it meets, or the ring itself.</param>
/// <param name="Place">Where [m]; for a coordinate that is not finite, the point as given.</param>
public sealed record RegionFault(RegionFaultKind Kind, int RingIndex, int OtherRing, Point2 Place);

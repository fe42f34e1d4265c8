namespace InfusionSim.Numerics.Geometry;

/// <summary>What a set of rings leaves open of a region.</summary>
/// <param name="Area">Its area [m²].</param>
/// <param name="Place">A place inside its largest piece [m].</param>
public sealed record UncoveredPart(double Area, Point2 Place);

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Panels;

/// <summary>A place whose arrival the forecast names.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="At">Where it lies [m].</param>
public sealed record TimingMark(string Name, Point2 At);

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Network;

/// <summary>A short length of a line, a hose or a gap.</summary>
/// <param name="Part">What it belongs to.</param>
/// <param name="Line">Which one: index of the feed, vent or gap in the panel's order; for the hose of a pot that of the first feed that draws from it.</param>
/// <param name="Volume">What resin fills in it before any goes on [m³], above 0.</param>
/// <param name="At">Its middle [m]; null for a hose, which lies nowhere on the drawing.</param>
public readonly record struct LineNode(LinePart Part, int Line, double Volume, Point2? At);

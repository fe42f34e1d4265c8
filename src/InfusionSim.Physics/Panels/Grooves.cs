namespace InfusionSim.Physics.Panels;

/// <summary>Straight grooves cut into a plain core, side by side and alike.</summary>
/// <param name="Width">Width of a groove [m], above 0.</param>
/// <param name="Depth">Depth of a groove [m], above 0.</param>
/// <param name="Pitch">Distance from one groove to the next, middle to middle [m], above the width.</param>
/// <param name="Angle">How far they are turned anticlockwise from x [rad].</param>
/// <param name="BothWays">Whether a second set lies across the first.</param>
public sealed record Grooves(double Width, double Depth, double Pitch, double Angle, bool BothWays);

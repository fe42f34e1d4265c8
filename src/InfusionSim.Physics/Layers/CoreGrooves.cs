namespace InfusionSim.Physics.Layers;

/// <summary>Grooves cut into a core, side by side.</summary>
/// <param name="Width">Width of a groove [m].</param>
/// <param name="Depth">Depth of a groove [m].</param>
/// <param name="Pitch">Distance from one to the next, middle to middle [m].</param>
/// <param name="Angle">How far they are turned anticlockwise from x [rad].</param>
/// <param name="BothWays">Whether a second set lies across the first.</param>
public sealed record CoreGrooves(double Width, double Depth, double Pitch, double Angle = 0, bool BothWays = false);

namespace InfusionSim.Physics.Panels;

/// <summary>How the plane of the panel lies to the level.</summary>
/// <param name="Uphill">Direction on the drawing in which the panel rises, anticlockwise from x [rad].</param>
/// <param name="Angle">Angle between the panel's plane and the level [rad], 0 to π/2.</param>
public sealed record Slope(double Uphill, double Angle);

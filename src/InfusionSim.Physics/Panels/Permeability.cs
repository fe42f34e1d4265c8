namespace InfusionSim.Physics.Panels;

/// <summary>Permeability of a lay-up along its own axes.</summary>
/// <param name="K1">Along the angle [m²].</param>
/// <param name="K2">In the plane, across the angle [m²].</param>
/// <param name="K3">Through the thickness [m²].</param>
/// <param name="Angle">How far K1 is turned anticlockwise from x [rad].</param>
public sealed record Permeability(double K1, double K2, double K3, double Angle);

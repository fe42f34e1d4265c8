namespace InfusionSim.Physics.Panels;

/// <summary>A line or fitting that air is drawn from, at the pressure under the bag.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="ContactWidth">Width of the line, or diameter of the fitting, where it touches the cloth [m].</param>
/// <param name="Kind">What it lets through.</param>
public sealed record Vent(string Name, LinePath Path, double ContactWidth, VentKind Kind);

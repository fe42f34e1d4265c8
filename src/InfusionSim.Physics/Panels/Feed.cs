namespace InfusionSim.Physics.Panels;

/// <summary>A line or fitting that resin comes from, at the pressure of the air in the shop.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="ContactWidth">Width of the line, or diameter of the fitting, where it touches the cloth [m].</param>
public sealed record Feed(string Name, LinePath Path, double ContactWidth);

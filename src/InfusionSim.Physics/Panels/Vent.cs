using InfusionSim.Physics.Clamps;

namespace InfusionSim.Physics.Panels;

/// <summary>A line or fitting that air is drawn from, at the pressure under the bag.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="ContactWidth">Width of the line, or diameter of the fitting, where it touches the cloth [m].</param>
/// <param name="Kind">What it lets through.</param>
public sealed record Vent(string Name, LinePath Path, double ContactWidth, VentKind Kind)
{
    /// <summary>Inner diameter of the line [m]; null when the pressure is the same all along it.</summary>
    public double? Bore { get; init; }

    /// <summary>Hose between the line and the catch pot; null for none.</summary>
    public Hose? Hose { get; init; }

    /// <summary>What is done with its clamp.</summary>
    public Clamp Clamp { get; init; } = Clamp.AlwaysOpen;
}

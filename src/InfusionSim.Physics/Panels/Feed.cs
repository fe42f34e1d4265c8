using InfusionSim.Physics.Clamps;

namespace InfusionSim.Physics.Panels;

/// <summary>A line or fitting that resin comes from, at the pressure of the air in the shop unless a pot, a hose or its own bore takes some of it.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Path">Where it lies.</param>
/// <param name="ContactWidth">Width of the line, or diameter of the fitting, where it touches the cloth [m].</param>
public sealed record Feed(string Name, LinePath Path, double ContactWidth)
{
    /// <summary>Inner diameter of the line [m]; null when the pressure is the same all along it.</summary>
    public double? Bore { get; init; }

    /// <summary>Hose between the pot, or its T-piece, and the line; null for none.</summary>
    public Hose? Hose { get; init; }

    /// <summary>Name of the pot it draws from; null for a pot of its own, level with the panel's lowest feed.</summary>
    public string? Pot { get; init; }

    /// <summary>What is done with its clamp.</summary>
    public Clamp Clamp { get; init; } = Clamp.AlwaysOpen;
}

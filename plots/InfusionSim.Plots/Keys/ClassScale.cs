using SkiaSharp;

namespace InfusionSim.Plots.Keys;

/// <summary>What a bar of colour classes says.</summary>
/// <param name="Heading">What the colours show.</param>
/// <param name="Classes">Colour of each class, in order.</param>
/// <param name="Borders">Text at each border between two classes.</param>
/// <param name="First">Text at the start.</param>
/// <param name="Last">Text at the end.</param>
internal sealed record ClassScale(string Heading, IReadOnlyList<SKColor> Classes, IReadOnlyList<string> Borders, string First, string Last);

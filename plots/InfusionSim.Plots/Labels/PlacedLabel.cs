using SkiaSharp;

namespace InfusionSim.Plots.Labels;

/// <summary>A text with its place on the picture.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Box">The box it takes up.</param>
/// <param name="Anchor">The place it speaks of, when a leader runs there [px].</param>
/// <param name="Strong">Whether it must be seen first.</param>
internal sealed record PlacedLabel(string Text, LabelBox Box, SKPoint? Anchor = null, bool Strong = false);

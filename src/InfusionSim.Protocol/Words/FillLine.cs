namespace InfusionSim.Protocol.Words;

/// <summary>One line of the answer in words.</summary>
/// <param name="Label">What it speaks of: FILLS, Gel, Last; empty where it goes on from the line above.</param>
/// <param name="Text">What it says.</param>
public readonly record struct FillLine(string Label, string Text);

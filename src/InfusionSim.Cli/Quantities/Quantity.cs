namespace InfusionSim.Cli.Quantities;

/// <summary>A number that a person typed, understood.</summary>
/// <param name="Value">The number in the unit of its key.</param>
/// <param name="Understood">What was made of it, in words: "0.3 Pa·s".</param>
public sealed record Quantity(double Value, string Understood);

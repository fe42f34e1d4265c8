namespace InfusionSim.Numerics.Integration;

/// <summary>The right side of a system of ordinary differential equations.</summary>
/// <param name="time">The free variable, in its own unit [-].</param>
/// <param name="state">The unknowns, each in its own unit [-]. [unknowns].</param>
/// <param name="slope">Takes their rates of change [-]. [unknowns].</param>
public delegate void Slope(double time, ReadOnlySpan<double> state, Span<double> slope);

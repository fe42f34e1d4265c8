namespace InfusionSim.Physics.Clamps;

/// <summary>At a time on the clock on the wall.</summary>
/// <param name="Time">Time from the opening of the first feed [s], at least 0.</param>
public sealed record AtTime(double Time) : Moment;

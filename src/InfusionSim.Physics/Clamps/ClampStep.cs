namespace InfusionSim.Physics.Clamps;

/// <summary>One turn of a clamp.</summary>
/// <param name="When">When it is turned.</param>
/// <param name="OpenFraction">How far open it is from then on: share of the hose's conductance that it leaves [-], 0 shut to 1 open.</param>
public sealed record ClampStep(Moment When, double OpenFraction);

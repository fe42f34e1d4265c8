namespace InfusionSim.Physics.Clamps;

/// <summary>When the last place that can fill is full.</summary>
public sealed record WhenFull : Moment;

namespace InfusionSim.Physics.Clamps;

/// <summary>When the front passes a timing mark, or resin shows in a vent. Knows no minute, so every resin acts at the same place.</summary>
/// <param name="Name">Name of the timing mark or the vent.</param>
public sealed record WhenReached(string Name) : Moment;

namespace InfusionSim.Physics.Clamps;

/// <summary>A change of the vacuum under the bag.</summary>
/// <param name="When">When it is made.</param>
/// <param name="Pressure">Absolute pressure under the bag from then on [Pa], below that of the air in the shop.</param>
public sealed record BagStep(Moment When, double Pressure);

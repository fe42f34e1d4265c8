namespace InfusionSim.Physics.Air;

/// <summary>Dry nodes at the moment they are cut off from every vent that still passes air.</summary>
/// <param name="Cells">The nodes, in the order they fill.</param>
/// <param name="SealedClock">Drive clock of that moment [-].</param>
public sealed record Pocket(IReadOnlyList<int> Cells, double SealedClock);

namespace InfusionSim.Physics.Air;

/// <summary>Gas that is sealed in: ideal, and as warm as the panel, so that pressure times volume stays.</summary>
/// <param name="Nodes">The nodes it keeps from being full.</param>
/// <param name="Amount">Pressure times volume [Pa·m³].</param>
/// <param name="SealedClock">Drive clock at which it was cut off from every vent that still passed air [-].</param>
/// <param name="SealedArea">Dry area at that moment [m²].</param>
public sealed record GasPocket(IReadOnlyList<int> Nodes, double Amount, double SealedClock, double SealedArea);

using InfusionSim.Physics.Resins;
using InfusionSim.Planning.Mixing;

namespace InfusionSim.Planning.Resins;

/// <summary>One resin of a comparison.</summary>
/// <param name="Resin">The resin.</param>
/// <param name="Mixing">How somebody wants to mix it.</param>
/// <param name="Temperatures">The temperatures that its card is good for; null where it knows one viscosity only.</param>
public sealed record ResinCandidate(Resin Resin, MixWishes Mixing, TemperatureRange? Temperatures = null);

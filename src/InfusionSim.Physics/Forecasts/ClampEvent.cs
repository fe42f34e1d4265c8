using InfusionSim.Physics.Clamps;

namespace InfusionSim.Physics.Forecasts;

/// <summary>A turn of a clamp, or a change of the vacuum, that comes to pass.</summary>
/// <param name="Line">Feed or vent whose clamp is turned; null for the vacuum.</param>
/// <param name="Time">When, from the opening of the first feed [s].</param>
/// <param name="Value">How far open the clamp is from then on, 0 shut to 1 open [-]; for the vacuum the absolute pressure under the bag [Pa].</param>
/// <param name="When">The moment that was waited for.</param>
public sealed record ClampEvent(string? Line, double Time, double Value, Moment When);

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Forecasts;

/// <summary>One thing the laminator should know.</summary>
/// <param name="Kind">What it speaks of.</param>
/// <param name="At">Where [m]; null where it has no place.</param>
/// <param name="Line">Feed or vent it speaks of; null where there is none.</param>
/// <param name="Time">When, from the opening of the first feed [s]; null where it has no time.</param>
/// <param name="Amount">How much, in the SI unit of its kind: dry area [m²], volume [m³], time [s] or ratio [-]; null where there is none.</param>
public sealed record Finding(FindingKind Kind, Point2? At = null, string? Line = null, double? Time = null, double? Amount = null);

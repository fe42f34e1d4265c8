namespace InfusionSim.Planning.Resins;

/// <summary>One moment of a resin on a panel.</summary>
/// <param name="Time">Time from the opening of the first feed [s].</param>
/// <param name="FilledFraction">Share of the pore volume that is full [-]; after the end of the fill its last value.</param>
/// <param name="Viscosity">Viscosity [Pa·s]; null where the resin has gelled.</param>
/// <param name="DriveRatio">Drive clock over that at which the last place that can fill is full [-]: 1 when the panel is full, at gel the gel margin.</param>
public sealed record ResinMoment(double Time, double FilledFraction, double? Viscosity, double DriveRatio);

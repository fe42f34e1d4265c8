namespace InfusionSim.Physics.Forecasts;

/// <summary>The pressure at one place of a line.</summary>
/// <param name="Distance">Way along the line from its first point [m].</param>
/// <param name="Pressure">Pressure above the bag's there, over the driving pressure [-].</param>
public readonly record struct LinePoint(double Distance, double Pressure);

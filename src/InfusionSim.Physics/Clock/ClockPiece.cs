namespace InfusionSim.Physics.Clock;

/// <summary>A stretch of the drive clock under one vacuum.</summary>
/// <param name="Time">When it begins, from the opening of the first feed [s].</param>
/// <param name="Clock">Drive clock at that time [-].</param>
/// <param name="Pressure">Driving pressure from then on [Pa], above 0.</param>
internal readonly record struct ClockPiece(double Time, double Clock, double Pressure);

namespace InfusionSim.Verification.Tests.EventByEvent;

/// <summary>A panel at one clock of the cell-by-cell scheme. Arrays run [rows × columns], x fastest.</summary>
/// <param name="Clock">Drive clock [-].</param>
/// <param name="Full">Whether a cell is full.</param>
/// <param name="Saturation">How full each cell is [-], 0 to 1.</param>
/// <param name="AccumulatedPressure">Pressure above the bag's over the driving pressure, accumulated over the clock [-].</param>
public sealed record CellByCellState(double Clock, bool[] Full, double[] Saturation, double[] AccumulatedPressure);

namespace InfusionSim.Physics.Forecasts;

/// <summary>What happens at one vent.</summary>
/// <param name="ArrivalTime">When the first resin reaches it [s]; null when none does before the end.</param>
/// <param name="FilledFractionAtArrival">How much of the pore volume is full at that moment [-]; null when none reaches it.</param>
/// <param name="ResinOut">Volume that has left through it up to the end [m³].</param>
/// <param name="ResinOutRate">Volume that leaves per second after the end while it stays open [m³/s].</param>
public sealed record VentForecast(double? ArrivalTime, double? FilledFractionAtArrival, double ResinOut, double ResinOutRate);

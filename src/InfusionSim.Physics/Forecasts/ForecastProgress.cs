namespace InfusionSim.Physics.Forecasts;

/// <summary>How far a forecast is.</summary>
/// <param name="DoneFraction">Share of the work that is done [-], 0 to 1.</param>
/// <param name="Stage">What is being computed, in words.</param>
public readonly record struct ForecastProgress(double DoneFraction, string Stage);

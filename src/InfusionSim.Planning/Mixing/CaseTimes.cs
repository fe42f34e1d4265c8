using InfusionSim.Physics.Forecasts;

namespace InfusionSim.Planning.Mixing;

/// <summary>When in the fast and the slow case of the likely band happens what happens at a time of the forecast.</summary>
/// <param name="forecast">The forecast.</param>
internal sealed class CaseTimes(Forecast forecast)
{
    /// <summary>The time in the fast case [s].</summary>
    /// <param name="time">Time from the opening of the first feed [s].</param>
    public double Early(double time) => InCase(time, 1 / forecast.Likely.PermeabilityFactor);

    /// <summary>The time in the slow case [s]; gel when it gels before.</summary>
    /// <param name="time">Time from the opening of the first feed [s].</param>
    public double Late(double time) => InCase(time, forecast.Likely.PermeabilityFactor);

    // The same place on the drive clock needs more or less of it; after the end the minutes are those on the wall.
    private double InCase(double time, double factor)
    {
        double until = Math.Min(time, forecast.EndTime), found = forecast.Clock.TimeAt(forecast.Clock.ClockAt(until) * factor);
        return (double.IsFinite(found) ? found : Math.Max(until, forecast.GelTime)) + (time - until);
    }
}

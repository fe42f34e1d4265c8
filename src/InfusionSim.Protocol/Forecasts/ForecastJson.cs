using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>The proto-JSON of a forecast: every list and zero is printed, what does not exist is left out.</summary>
public static class ForecastJson
{
    /// <summary>Writes a forecast.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="indented">Over several lines.</param>
    public static string Write(FillForecast forecast, bool indented = true) => MessageWriter.WriteAnswer(forecast, indented);
}

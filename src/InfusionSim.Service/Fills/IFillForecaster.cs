using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Service.Fills;

/// <summary>Computes forecasts; the seam at which another computer, or a test, takes the place of the physics.</summary>
public interface IFillForecaster
{
    /// <summary>Predicts a fill.</summary>
    /// <param name="inputs">The plan in SI.</param>
    /// <param name="progress">Told how far the work is; may be null. Called on the computing thread.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    Forecast Predict(FillInputs inputs, IProgress<ForecastProgress>? progress, CancellationToken cancellation);

    /// <summary>Computes the panel at one time of a forecast.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="inputs">What it was computed from.</param>
    /// <param name="time">Time from the opening of the first feed [s], from 0 to the end of the forecast.</param>
    /// <param name="withPressure">Whether to compute the pressure too.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    FillState StateAt(Forecast forecast, FillInputs inputs, double time, bool withPressure, CancellationToken cancellation);
}

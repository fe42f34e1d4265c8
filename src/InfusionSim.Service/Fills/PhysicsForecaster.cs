using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Service.Fills;

/// <summary>Computes forecasts with the physics of this project.</summary>
public sealed class PhysicsForecaster : IFillForecaster
{
    /// <inheritdoc/>
    public Forecast Predict(FillInputs inputs, IProgress<ForecastProgress>? progress, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(inputs);
        return Forecaster.Predict(inputs.Panel, inputs.Resin, inputs.Bag, inputs.Goals, inputs.PermeabilityFactor, progress, cancellation);
    }

    /// <inheritdoc/>
    public FillState StateAt(Forecast forecast, FillInputs inputs, double time, bool withPressure, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(inputs);
        return forecast.Map.StateAt(forecast.Clock.ClockAt(time), withPressure, cancellation);
    }
}

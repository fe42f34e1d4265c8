using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Predicts a fill: the one way from a panel, a resin and a bag to a forecast.</summary>
public static class Forecaster
{
    /// <summary>Predicts a fill.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="resin">What flows.</param>
    /// <param name="bag">What drives it.</param>
    /// <param name="goals">What is asked of it.</param>
    /// <param name="permeabilityFactor">How uncertain the permeability of the cloth as a whole is, times or divided by [-], at least 1.</param>
    /// <param name="progress">Told how far the work is; may be null. Called on the computing thread.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static Forecast Predict(
        Panel panel,
        Resin resin,
        Bag bag,
        Goals goals,
        double permeabilityFactor,
        IProgress<ForecastProgress>? progress = null,
        CancellationToken cancellation = default) => throw new NotImplementedException();
}

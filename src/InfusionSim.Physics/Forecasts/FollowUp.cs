using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Quality;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Adds to a judged forecast what does not decide how it ends: the quality numbers, and what happens after the front has arrived.</summary>
internal static class FollowUp
{
    /// <summary>The forecast with what follows from it.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="resin">What flows.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static Forecast Of(Forecast forecast, Resin resin, CancellationToken cancellation)
    {
        return forecast with
        {
            Quality = QualityFinder.Of(forecast.Map, forecast.Clock, resin.Wetting, forecast.EndClock),
            AfterFront = AfterFrontFinder.Of(forecast, VentShutting.Of(forecast), cancellation),
        };
    }
}

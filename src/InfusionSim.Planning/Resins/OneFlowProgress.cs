using InfusionSim.Physics.Forecasts;

namespace InfusionSim.Planning.Resins;

/// <summary>How far the work is as a whole, told by one of several equal parts.</summary>
/// <param name="whole">Told the whole.</param>
/// <param name="before">Parts that are done [-].</param>
/// <param name="parts">How many parts there are [-].</param>
internal sealed class OneFlowProgress(IProgress<ForecastProgress> whole, int before, int parts) : IProgress<ForecastProgress>
{
    /// <inheritdoc/>
    public void Report(ForecastProgress value) => whole.Report(value with { DoneFraction = (before + value.DoneFraction) / parts });
}

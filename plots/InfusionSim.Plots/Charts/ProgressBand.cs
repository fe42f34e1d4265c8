using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Charts;

/// <summary>Wet share against time in the middle case and at both ends of the likely band; each holds its value from gel on.</summary>
/// <param name="Fast">The fast end.</param>
/// <param name="Middle">The plan as it stands.</param>
/// <param name="Slow">The slow end.</param>
/// <param name="FastEndsS">When the fast end runs out of moments although it goes on; infinite when it is known to its end [s].</param>
internal sealed record ProgressBand(ProgressCurve Fast, ProgressCurve Middle, ProgressCurve Slow, double FastEndsS)
{
    /// <summary>Makes the band from the middle case.</summary>
    /// <param name="middle">Wet share in the middle case up to its end.</param>
    /// <param name="forecast">Its forecast.</param>
    /// <param name="factor">How uncertain the permeability is, at least 1 [-].</param>
    internal static ProgressBand From(ProgressCurve middle, FillForecast forecast, double factor)
    {
        var gelTimeS = forecast.GelTimeS;
        var fast = middle.Slower(1 / factor);

        // Gel cuts the moments off; in the fast case the resin gets further by then, but no moment says how far.
        var isCutOff = forecast.Outcome == Outcome.GelsFirst && factor > 1;
        return new ProgressBand(
            fast.Until(gelTimeS), middle.Until(gelTimeS), middle.Slower(factor).Until(gelTimeS), isCutOff ? fast.TimesS[^1] : double.PositiveInfinity);
    }
}

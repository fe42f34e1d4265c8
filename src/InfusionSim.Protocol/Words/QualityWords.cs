using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about the front: how fast it runs and its capillary number, beside what is published of it. It judges nothing.</summary>
public static class QualityWords
{
    /// <summary>The line; none without a capillary number, for a speed alone tells nobody anything.</summary>
    internal static IEnumerable<FillLine> Lines(FillForecast forecast)
    {
        if (forecast.Quality is { HasCapillaryNumberFromRatio: true, HasFrontSpeedFromMmPerMin: true } quality)
            yield return new FillLine("Front", $"runs at {SpeedRange(quality)}; capillary number {NumberRange(quality)} ({Published(quality)})");
    }

    /// <summary>Speed of the front in nine tenths of the cloth: 8 to 90 mm/min.</summary>
    /// <param name="quality">Numbers with a speed.</param>
    public static string SpeedRange(FillQuality quality)
    {
        ArgumentNullException.ThrowIfNull(quality);
        return $"{Numbers.Figures(quality.FrontSpeedFromMmPerMin, 2)} to {Numbers.Figures(quality.FrontSpeedToMmPerMin, 2)} mm/min";
    }

    /// <summary>Capillary number of the front in nine tenths of the cloth: 0.0012 to 0.0085.</summary>
    /// <param name="quality">Numbers with a capillary number.</param>
    public static string NumberRange(FillQuality quality)
    {
        ArgumentNullException.ThrowIfNull(quality);
        return $"{Numbers.Figures(quality.CapillaryNumberFromRatio, 2)} to {Numbers.Figures(quality.CapillaryNumberToRatio, 2)}";
    }

    /// <summary>What is published, with its doubt.</summary>
    /// <param name="quality">Numbers with a capillary number.</param>
    public static string Published(FillQuality quality)
    {
        ArgumentNullException.ThrowIfNull(quality);
        return $"best as published: {Numbers.Say(quality.PublishedFromRatio)} to {Numbers.Say(quality.PublishedToRatio)}, doubtful; no verdict";
    }
}

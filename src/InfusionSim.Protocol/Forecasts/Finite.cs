namespace InfusionSim.Protocol.Forecasts;

/// <summary>Keeps numbers that are none from leaving: no reader of JSON or of a screen can use NaN.</summary>
internal static class Finite
{
    /// <summary>The number, when an answer cannot do without it.</summary>
    /// <exception cref="ForecastNotFiniteException">When it is NaN or infinite.</exception>
    public static double Needed(double value, string what) =>
        double.IsFinite(value) ? value : throw new ForecastNotFiniteException($"{what} came out as {value}.");

    /// <summary>The number, or null where it does not exist.</summary>
    public static double? OrNone(double? value) => value is double number && double.IsFinite(number) ? number : null;
}

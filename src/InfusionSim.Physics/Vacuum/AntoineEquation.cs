namespace InfusionSim.Physics.Vacuum;

/// <summary>Vapour pressure of a pure liquid after Antoine: log₁₀(p / bar) = A − B / (T + C).</summary>
/// <remarks>
/// A fit to measured values: good within the range it was made for, the less so the farther outside. It still answers there, and
/// <see cref="Covers"/> says that it is extrapolated.
/// </remarks>
/// <param name="A">Constant A, for pressures in bar [-].</param>
/// <param name="B">Constant B [K], above 0.</param>
/// <param name="C">Constant C [K].</param>
/// <param name="From">Lowest temperature of the fit [K].</param>
/// <param name="To">Highest temperature of the fit [K].</param>
public sealed record AntoineEquation(double A, double B, double C, double From, double To)
{
    private const double Bar = 1e5;

    /// <summary>Whether a temperature lies in the range of the fit.</summary>
    /// <param name="temperature">Temperature [K].</param>
    public bool Covers(double temperature) => temperature >= From && temperature <= To;

    /// <summary>Vapour pressure [Pa].</summary>
    /// <param name="temperature">Temperature [K], above −C.</param>
    public double PressureAt(double temperature)
    {
        if (!(temperature + C > 0)) throw new ArgumentOutOfRangeException(nameof(temperature), temperature, $"The temperature must lie above {-C} K.");
        return Bar * Math.Pow(10, A - B / (temperature + C));
    }

    /// <summary>Temperature at which the pure liquid boils [K].</summary>
    /// <param name="pressure">Absolute pressure [Pa], above 0 and below that at which the fit ends, 10^A bar.</param>
    public double BoilingPointAt(double pressure)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(pressure);
        double below = A - Math.Log10(pressure / Bar);
        return below > 0 ? B / below - C : throw new ArgumentOutOfRangeException(nameof(pressure), pressure, "The fit knows no boiling at so high a pressure.");
    }
}

using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Vacuum;

/// <summary>How much air a bag lets in: pressure times volume in a given time, at the temperature of the shop.</summary>
/// <remarks>For an ideal gas p V counts molecules, so the number is the same at whatever pressure it is measured. Derived from p V = n R T.</remarks>
/// <param name="Throughput">Pressure times volume that comes in each second [Pa·m³/s], at least 0; 1 mbar·L/s is 0.1.</param>
public readonly record struct GasLeak(double Throughput)
{
    /// <summary>Throughput of one standard cubic centimetre a minute [Pa·m³/s]: 1 cm³ of air at 101,325 Pa, reckoned at one temperature.</summary>
    public const double StandardCubicCentimetrePerMinute = 101_325e-6 / 60;

    /// <summary>The leak as air of the shop at sea level that comes in each minute [cm³/min] (sccm).</summary>
    public double StandardCubicCentimetresPerMinute => Throughput / StandardCubicCentimetrePerMinute;

    /// <summary>The leak as amount of gas [mol/s].</summary>
    /// <param name="temperature">Temperature of the gas [K], above 0.</param>
    public double MolesPerSecond(double temperature)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        return Throughput / (GasConstant.Value * temperature);
    }

    /// <summary>Amount of gas that a closed volume gains each second [mol/s], with its temperature before and after.</summary>
    /// <remarks>n = (V/R) (p₂/T₂ − p₁/T₁) / Δt; the form of 40 CFR 1065.644. Below 0 when gas has left.</remarks>
    /// <param name="volume">The closed volume [m³].</param>
    /// <param name="pressureBefore">Absolute pressure at the start [Pa].</param>
    /// <param name="temperatureBefore">Temperature at the start [K], above 0.</param>
    /// <param name="pressureAfter">Absolute pressure at the end [Pa].</param>
    /// <param name="temperatureAfter">Temperature at the end [K], above 0.</param>
    /// <param name="duration">Time between the two [s], above 0.</param>
    public static double MolesPerSecond(
        double volume, double pressureBefore, double temperatureBefore, double pressureAfter, double temperatureAfter, double duration)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperatureBefore);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperatureAfter);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(duration);
        return volume / GasConstant.Value * (pressureAfter / temperatureAfter - pressureBefore / temperatureBefore) / duration;
    }
}

namespace InfusionSim.Physics.Vacuum;

/// <summary>Pressure of the air at a height above the sea on a standard day.</summary>
/// <remarks>
/// p = p₀ (1 − L H / T₀)^(g M / (R L)), the lowest layer of ISO 2533:1975 (formula and constants from memory): T₀ 288.15 K, p₀ 101,325 Pa,
/// L 6.5 K per km, g 9.80665 m/s², M 0.028964420 kg/mol, R 8.31432 J/(mol·K). H is the geopotential height, within 0.05 % of the
/// height on a map up to 3000 m. The weather moves the air by some 3 % either way: a barometer knows better.
/// </remarks>
public static class StandardAtmosphere
{
    /// <summary>Lowest height the formula holds for [m].</summary>
    public const double LowestAltitude = -500;

    /// <summary>Greatest height that it is used for here [m]; the standard's lowest layer goes on to 11,000 m.</summary>
    public const double HighestAltitude = 9000;

    /// <summary>Pressure at the level of the sea [Pa].</summary>
    public const double SeaLevelPressure = 101_325;

    private const double SeaLevelTemperature = 288.15, LapseRate = 0.0065, Gravity = 9.80665, MolarMass = 0.028964420, GasConstant = 8.31432;

    /// <summary>Pressure of the air [Pa].</summary>
    /// <param name="altitude">Height above the sea [m], −500 to 9000; throws outside.</param>
    public static double PressureAt(double altitude)
    {
        if (!(altitude >= LowestAltitude && altitude <= HighestAltitude))
            throw new ArgumentOutOfRangeException(nameof(altitude), altitude, $"The height must lie between {LowestAltitude} and {HighestAltitude} m.");
        return SeaLevelPressure * Math.Pow(1 - LapseRate * altitude / SeaLevelTemperature, Gravity * MolarMass / (GasConstant * LapseRate));
    }
}

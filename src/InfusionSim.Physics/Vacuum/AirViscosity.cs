namespace InfusionSim.Physics.Vacuum;

/// <summary>Viscosity of air.</summary>
/// <remarks>
/// μ = β T^1.5 / (T + S) after Sutherland, β = 1.458e-6 kg/(s·m·√K), S = 110.4 K, as in ISO 2533:1975 (from memory). It does not depend on
/// the pressure as long as the pores are wider than the way between two collisions.
/// </remarks>
public static class AirViscosity
{
    private const double Beta = 1.458e-6, Sutherland = 110.4;

    /// <summary>Viscosity [Pa·s].</summary>
    /// <param name="temperature">Temperature [K], above 0.</param>
    public static double At(double temperature)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(temperature);
        return Beta * Math.Pow(temperature, 1.5) / (temperature + Sutherland);
    }
}

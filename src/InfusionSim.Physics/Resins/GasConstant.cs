namespace InfusionSim.Physics.Resins;

/// <summary>The molar gas constant.</summary>
public static class GasConstant
{
    /// <summary>
    /// Exact since 2019 [J/(mol·K)]. Source: Bureau International des Poids et Mesures, The International System of Units, 9th edition (from memory).
    /// </summary>
    public const double Value = 8.314462618;

    /// <summary>0 °C [K].</summary>
    public const double ZeroCelsius = 273.15;
}

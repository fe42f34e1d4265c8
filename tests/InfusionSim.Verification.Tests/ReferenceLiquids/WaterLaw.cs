using InfusionSim.Physics.Resins;

namespace InfusionSim.Verification.Tests.ReferenceLiquids;

/// <summary>Viscosity of water at 0.1 MPa, 253 to 383 K, over that at 25 °C.</summary>
/// <remarks>
/// Σ aᵢ (T/300 K)^bᵢ in µPa·s. Source: Pátek, Hrubý, Klomfar, Součková and Harvey, J. Phys. Chem. Ref. Data 38 (2009) 21–29, doi 10.1063/1.3043575.
/// </remarks>
public sealed record WaterLaw() : TemperatureLaw(298.15)
{
    private static readonly double[] Factors = [280.68, 511.45, 61.131, 0.45903], Powers = [-1.9, -7.7, -19.6, -40];

    /// <summary>Viscosity at the reference [Pa·s].</summary>
    public static double AtReference => At(298.15);

    /// <inheritdoc/>
    public override double FactorAt(double temperature) => At(temperature) / AtReference;

    private static double At(double temperature) => 1e-6 * Factors.Zip(Powers, (factor, power) => factor * Math.Pow(temperature / 300, power)).Sum();
}

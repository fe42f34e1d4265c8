namespace InfusionSim.Physics.Resins;

/// <summary>A rate that grows with temperature as a time by the same law gets shorter.</summary>
/// <param name="Rate">The rate at the law's reference [1/s], at least 0.</param>
/// <param name="Law">How it changes with temperature.</param>
public sealed record ThermalRate(double Rate, TemperatureLaw Law)
{
    /// <summary>A rate from its factor: k = A exp(−E/RT).</summary>
    /// <param name="rate">Factor and activation.</param>
    /// <param name="reference">Any temperature near those of interest [K].</param>
    public static ThermalRate Of(ArrheniusRate rate, double reference)
    {
        ArgumentNullException.ThrowIfNull(rate);
        return new(rate.At(reference), new ArrheniusLaw(reference, rate.Activation));
    }
}

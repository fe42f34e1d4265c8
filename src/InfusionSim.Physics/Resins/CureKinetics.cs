namespace InfusionSim.Physics.Resins;

/// <summary>How fast a resin cures: dα/dt = (k₁ + k₂ αᵐ)(1 − α)ⁿ with the degree of cure α from 0 to 1.</summary>
/// <remarks>
/// Source: Kamal and Sourour, Polym. Eng. Sci. 13 (1973) 59–64 (from memory). Holds over the temperatures it was fitted to. Where k₁ is 0 it only
/// starts from a degree of cure above 0. Says nothing of a glass that stops the cure before it is complete.
/// </remarks>
/// <param name="First">k₁, which starts the reaction.</param>
/// <param name="Second">k₂, by which it speeds itself up.</param>
/// <param name="SelfOrder">m [-], at least 0.</param>
/// <param name="RestOrder">n [-], above 0.</param>
/// <param name="StartConversion">Degree of cure at mixing [-], 0 up to below <paramref name="GelConversion"/>.</param>
/// <param name="GelConversion">Degree of cure at which it gels [-], below 1.</param>
public sealed record CureKinetics(ArrheniusRate First, ArrheniusRate Second, double SelfOrder, double RestOrder, double StartConversion, double GelConversion)
{
    /// <summary>Degree of cure from which the part can be handled [-]; null where nobody named one.</summary>
    public double? HandlingConversion { get; init; }

    /// <summary>The heat it sets free; null where nobody named it.</summary>
    public CureHeat? Heat { get; init; }

    /// <summary>dα/dt [1/s].</summary>
    /// <param name="conversion">Degree of cure α [-].</param>
    /// <param name="temperature">Temperature [K], above 0.</param>
    public double RateAt(double conversion, double temperature)
    {
        double done = Math.Max(0, conversion), left = Math.Max(0, 1 - conversion);
        double self = SelfOrder == 0 ? 1 : Math.Pow(done, SelfOrder);
        return (First.At(temperature) + Second.At(temperature) * self) * Math.Pow(left, RestOrder);
    }
}

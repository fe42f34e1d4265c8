using InfusionSim.Physics.Resins;

namespace InfusionSim.Verification.Tests.ReferenceLiquids;

/// <summary>Viscosity of glycerol and water, 0 to 100 °C, over that at 25 °C.</summary>
/// <remarks>Source: Cheng, Ind. Eng. Chem. Res. 47 (2008) 3285–3288.</remarks>
/// <param name="Share">Mass of glycerol over the whole [-].</param>
public sealed record GlycerolLaw(double Share) : TemperatureLaw(298.15)
{
    /// <summary>Viscosity at the reference [Pa·s].</summary>
    public double AtReference => At(298.15);

    /// <inheritdoc/>
    public override double FactorAt(double temperature) => At(temperature) / AtReference;

    private double At(double temperature)
    {
        double t = temperature - 273.15;
        double water = 1.790 * Math.Exp((-1230 - t) * t / (36100 + 360 * t)), glycerol = 12100 * Math.Exp((-1233 + t) * t / (9900 + 70 * t));
        double a = 0.705 - 0.0017 * t, b = (4.9 + 0.036 * t) * Math.Pow(a, 2.5);
        double weight = 1 - Share + a * b * Share * (1 - Share) / (a * Share + b * (1 - Share));
        return 1e-3 * Math.Pow(water, weight) * Math.Pow(glycerol, 1 - weight);
    }
}

namespace InfusionSim.Physics.Resins;

/// <summary>Halves for every 10 K that it is warmer, the rule of thumb of the workshop (common practice; good to perhaps a fifth within 10 K).</summary>
/// <param name="Reference">Temperature at which it was measured [K], above 0.</param>
public sealed record HalvingLaw(double Reference) : TemperatureLaw(Reference)
{
    /// <summary>By how much warmer halves it [K].</summary>
    public const double HalvesEvery = 10;

    /// <inheritdoc/>
    public override double FactorAt(double temperature) => Math.Pow(2, (Reference - temperature) / HalvesEvery);
}

namespace InfusionSim.Physics.Resins;

/// <summary>Falls with temperature as exp(E/RT).</summary>
/// <remarks>Holds well inside 30 K for infusion resins, far from the glass transition (common practice).</remarks>
/// <param name="Reference">Temperature at which it was measured [K], above 0.</param>
/// <param name="Activation">E [J/mol], at least 0.</param>
public sealed record ArrheniusLaw(double Reference, double Activation) : TemperatureLaw(Reference)
{
    /// <inheritdoc/>
    public override double FactorAt(double temperature) => Math.Exp(Activation / GasConstant.Value * (1 / temperature - 1 / Reference));
}

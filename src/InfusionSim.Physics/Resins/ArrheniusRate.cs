namespace InfusionSim.Physics.Resins;

/// <summary>A rate that grows with temperature: k = A exp(−E/RT).</summary>
/// <param name="Factor">A, the rate at boundless temperature [1/s], at least 0.</param>
/// <param name="Activation">E [J/mol], at least 0.</param>
public sealed record ArrheniusRate(double Factor, double Activation)
{
    /// <summary>The rate [1/s].</summary>
    /// <param name="temperature">Temperature [K], above 0.</param>
    public double At(double temperature) => Factor == 0 ? 0 : Factor * Math.Exp(-Activation / (GasConstant.Value * temperature));
}

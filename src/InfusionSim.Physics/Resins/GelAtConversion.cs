namespace InfusionSim.Physics.Resins;

/// <summary>Gels at the degree of cure that its kinetics name.</summary>
/// <param name="Kinetics">How fast it cures.</param>
public sealed record GelAtConversion(CureKinetics Kinetics) : GelRule
{
    /// <inheritdoc/>
    public override double TimeFromMixing(TemperatureCourse? temperature, double mixToOpen) =>
        new CureCourse(Kinetics, temperature ?? throw new ArgumentException("Kinetics need a temperature.", nameof(temperature)), mixToOpen)
            .TimeOf(Kinetics.GelConversion) + mixToOpen;
}

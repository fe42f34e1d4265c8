namespace InfusionSim.Physics.Resins;

/// <summary>Gels at the earliest of several times, for where they disagree the earliest is the cautious one; without any it never gels.</summary>
/// <param name="Rules">The rules.</param>
public sealed record EarliestGel(IReadOnlyList<GelRule> Rules) : GelRule
{
    /// <inheritdoc/>
    public override double TimeFromMixing(TemperatureCourse? temperature, double mixToOpen) =>
        Rules.Select(rule => rule.TimeFromMixing(temperature, mixToOpen)).DefaultIfEmpty(double.PositiveInfinity).Min();
}

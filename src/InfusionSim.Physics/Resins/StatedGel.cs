namespace InfusionSim.Physics.Resins;

/// <summary>A gel time taken as it is, at any temperature.</summary>
/// <param name="GelTime">From mixing until it gels [s].</param>
public sealed record StatedGel(double GelTime) : GelRule
{
    /// <inheritdoc/>
    public override double TimeFromMixing(TemperatureCourse? temperature, double mixToOpen) => GelTime;
}

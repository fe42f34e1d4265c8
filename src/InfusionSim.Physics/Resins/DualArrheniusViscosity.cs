namespace InfusionSim.Physics.Resins;

/// <summary>A viscosity that falls with temperature and rises with age: ln μ = ln μ₀(T) + ∫ k(T) dt.</summary>
/// <remarks>
/// Source: Roller, Polym. Eng. Sci. 15 (1975) 406–414 (from memory). Holds before gel only and says nothing of when it gels.
/// </remarks>
/// <param name="Start">Viscosity at mixing.</param>
/// <param name="Rise">k, how fast its logarithm rises.</param>
public sealed record DualArrheniusViscosity(ThermalViscosity Start, ThermalRate Rise) : ViscosityModel
{
    /// <inheritdoc/>
    public override ViscosityCourse Along(TemperatureCourse? temperature, double mixToOpen) => new Course(this, temperature, mixToOpen);

    private sealed class Course(DualArrheniusViscosity model, TemperatureCourse? temperature, double mixToOpen) : ViscosityCourse
    {
        private readonly ThermalAge age = new(model.Rise, temperature, mixToOpen);

        public override IReadOnlyList<double> Kinks => temperature?.Kinks ?? [];

        public override double At(double time) => model.Start.Viscosity * model.Start.Law.FactorAt(temperature, time) * Math.Exp(age.At(time));
    }
}

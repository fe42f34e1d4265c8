namespace InfusionSim.Physics.Resins;

/// <summary>A viscosity that depends on temperature and not on age.</summary>
/// <param name="Viscosity">Viscosity at the law's reference [Pa·s], above 0.</param>
/// <param name="Law">How it changes with temperature.</param>
public sealed record ThermalViscosity(double Viscosity, TemperatureLaw Law) : ViscosityModel
{
    /// <summary>The viscosity [Pa·s].</summary>
    /// <param name="temperature">Temperature [K], above 0.</param>
    public double At(double temperature) => Viscosity * Law.FactorAt(temperature);

    /// <inheritdoc/>
    public override ViscosityCourse Along(TemperatureCourse? temperature, double mixToOpen) =>
        temperature is { IsLevel: false } ? new Course(this, temperature) : new LevelCourse(Viscosity * Law.FactorAt(temperature, 0));

    private sealed class Course(ThermalViscosity model, TemperatureCourse temperature) : ViscosityCourse
    {
        public override IReadOnlyList<double> Kinks => temperature.Kinks;

        public override double At(double time) => model.At(temperature.At(time));
    }
}

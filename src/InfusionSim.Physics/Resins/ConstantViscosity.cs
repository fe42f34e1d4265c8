namespace InfusionSim.Physics.Resins;

/// <summary>A viscosity that stays the same at any temperature and age.</summary>
/// <param name="Viscosity">Viscosity [Pa·s], above 0.</param>
public sealed record ConstantViscosity(double Viscosity) : ViscosityModel
{
    /// <inheritdoc/>
    public override ViscosityCourse Along(TemperatureCourse? temperature, double mixToOpen) => new LevelCourse(Viscosity);
}

namespace InfusionSim.Physics.Resins;

/// <summary>A viscosity that falls with temperature and rises with the degree of cure: μ = μ₀(T) [α_g/(α_g − α)]^(A + Bα).</summary>
/// <remarks>Source: Castro and Macosko, AIChE J. 28 (1982) 250–260 (from memory). From the gel point α_g on nothing flows.</remarks>
/// <param name="Start">Viscosity before any cure.</param>
/// <param name="Kinetics">How fast it cures, with the gel point.</param>
/// <param name="Exponent">A [-], at least 0.</param>
/// <param name="ExponentPerConversion">B [-].</param>
public sealed record CastroMacoskoViscosity(ThermalViscosity Start, CureKinetics Kinetics, double Exponent, double ExponentPerConversion) : ViscosityModel
{
    /// <summary>How many times thicker than before any cure [-]; +∞ from the gel point on.</summary>
    /// <param name="conversion">Degree of cure [-].</param>
    public double ThickeningAt(double conversion) => conversion >= Kinetics.GelConversion
        ? double.PositiveInfinity
        : Math.Pow(Kinetics.GelConversion / (Kinetics.GelConversion - conversion), Exponent + ExponentPerConversion * conversion);

    /// <inheritdoc/>
    public override ViscosityCourse Along(TemperatureCourse? temperature, double mixToOpen) =>
        new Course(this, temperature ?? throw new ArgumentException("Kinetics need a temperature.", nameof(temperature)), mixToOpen);

    private sealed class Course : ViscosityCourse
    {
        private readonly CastroMacoskoViscosity model;

        private readonly TemperatureCourse temperature;

        private readonly CureCourse cure;

        public Course(CastroMacoskoViscosity model, TemperatureCourse temperature, double mixToOpen)
        {
            (this.model, this.temperature) = (model, temperature);
            cure = new(model.Kinetics, temperature, mixToOpen);
            KnownUntil = cure.TimeOf(model.Kinetics.GelConversion);
        }

        public override double KnownUntil { get; }

        public override IReadOnlyList<double> Kinks => temperature.Kinks;

        public override double At(double time) => model.Start.At(temperature.At(time)) * model.ThickeningAt(cure.ConversionAt(time));
    }
}

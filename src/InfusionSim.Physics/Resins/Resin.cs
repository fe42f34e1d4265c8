using InfusionSim.Physics.Quality;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Resins;

/// <summary>What flows: what a data sheet says of one mix of resin and hardener, and the temperatures it sees.</summary>
/// <remarks>All of it was mixed at once and has one age and one temperature, in the pot and in the panel.</remarks>
/// <param name="Viscosity">How thick it is.</param>
/// <param name="Gel">When it gels.</param>
/// <param name="MixToOpen">From mixing until the first feed opens [s].</param>
/// <param name="Density">Density of the mixed resin [kg/m³].</param>
public sealed record Resin(ViscosityModel Viscosity, GelRule Gel, double MixToOpen, double Density)
{
    /// <summary>A resin that stays as thick as it is until it gels, whatever the temperature.</summary>
    /// <param name="viscosity">Viscosity [Pa·s], above 0.</param>
    /// <param name="gelTime">From mixing until it gels [s].</param>
    /// <param name="mixToOpen">From mixing until the first feed opens [s].</param>
    /// <param name="density">Density of the mixed resin [kg/m³].</param>
    public Resin(double viscosity, double gelTime, double mixToOpen, double density)
        : this(new ConstantViscosity(viscosity), new StatedGel(gelTime), mixToOpen, density)
    {
    }

    /// <summary>The temperatures it sees; null where nobody named one and the card is used as it is.</summary>
    public TemperatureCourse? Temperature { get; init; }

    /// <summary>Components that may boil under a deep vacuum; empty when none is named.</summary>
    public IReadOnlyList<VolatileComponent> Volatiles { get; init; } = [];

    /// <summary>How it wets the fibres; null when that is not known.</summary>
    public Wetting? Wetting { get; init; }

    /// <summary>How fast it cures; null where nobody named it.</summary>
    public CureKinetics? Kinetics { get; init; }

    /// <summary>The degree of cure along the temperatures it sees; null without kinetics or without a temperature.</summary>
    public CureCourse? Cure() => Kinetics is null || Temperature is null ? null : new(Kinetics, Temperature, MixToOpen);
}

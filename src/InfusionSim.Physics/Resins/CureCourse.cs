using InfusionSim.Numerics.Integration;

namespace InfusionSim.Physics.Resins;

/// <summary>The degree of cure of one mix over time, along the temperatures that it sees.</summary>
public sealed class CureCourse
{
    private const double Tolerance = 1e-11;

    private const double Complete = 0.9999;

    /// <summary>How long a cure is followed [s]: a third of a year.</summary>
    public const double LongestTime = 1e7;

    private readonly Trajectory trajectory;

    /// <summary>Follows the cure.</summary>
    /// <param name="kinetics">How fast it cures.</param>
    /// <param name="temperature">The temperatures it sees.</param>
    /// <param name="mixToOpen">From mixing until the first feed opens [s].</param>
    public CureCourse(CureKinetics kinetics, TemperatureCourse temperature, double mixToOpen)
    {
        ArgumentNullException.ThrowIfNull(kinetics);
        ArgumentNullException.ThrowIfNull(temperature);
        double[] breaks = [-mixToOpen, .. temperature.Kinks.Where(kink => kink > -mixToOpen && kink < LongestTime), LongestTime];
        trajectory = Trajectory.Follow(
            (time, state, slope) => slope[0] = kinetics.RateAt(state[0], temperature.At(time)),
            [kinetics.StartConversion], breaks, Tolerance, static state => state[0] >= Complete);
    }

    /// <summary>Degree of cure [-].</summary>
    /// <param name="time">Time from the opening of the first feed [s]; before it counts below 0.</param>
    public double ConversionAt(double time) => trajectory.At(time)[0];

    /// <summary>When it reaches a degree of cure, from the opening of the first feed [s]; +∞ when it does not in a third of a year.</summary>
    /// <param name="conversion">Degree of cure [-], up to 0.9999.</param>
    public double TimeOf(double conversion) => trajectory.WhenReaches(0, conversion);
}

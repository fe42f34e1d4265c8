using InfusionSim.Numerics.Integration;

namespace InfusionSim.Physics.Resins;

/// <summary>How warm a pot of mixed resin gets: m c dT/dt = m H dα/dt − UA (T − T of the shop).</summary>
/// <remarks>
/// One temperature through the whole pot, heat leaves by its walls and surface alone (a lumped balance as in any textbook of heat transfer). The
/// middle of a large pot is warmer than that. Above <see cref="RunawayAbove"/> a real resin boils, smokes or decomposes, and the number means
/// nothing but that it runs away. Data sheet and local rules prevail.
/// </remarks>
public sealed class PotExotherm
{
    /// <summary>Temperature above which a pot is called runaway [K]: 200 °C (common practice).</summary>
    public const double RunawayAbove = 473.15;

    private const double Tolerance = 1e-11;

    private const double Complete = 0.99999;

    private const double NearlyCured = 0.95;

    // Twelve days.
    private const double LongestTime = 1e6;

    private readonly CureKinetics kinetics;

    private readonly Trajectory trajectory;

    /// <summary>Follows a pot from mixing on.</summary>
    /// <param name="kinetics">How fast it cures; with its heat.</param>
    /// <param name="mass">Mass of mixed resin [kg], above 0.</param>
    /// <param name="cooling">Heat that leaves the pot for each degree it is warmer than the shop, UA [W/K], at least 0.</param>
    /// <param name="ambient">Temperature of the shop [K].</param>
    /// <param name="start">Temperature of the resin when it is mixed [K].</param>
    public PotExotherm(CureKinetics kinetics, double mass, double cooling, double ambient, double start)
    {
        ArgumentNullException.ThrowIfNull(kinetics);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mass);
        ArgumentOutOfRangeException.ThrowIfNegative(cooling);
        CureHeat heat = kinetics.Heat ?? throw new ArgumentException("The heat of a pot needs the heat of reaction and the heat capacity.", nameof(kinetics));
        this.kinetics = kinetics;
        trajectory = Trajectory.Follow(
            (_, state, slope) =>
            {
                slope[0] = kinetics.RateAt(state[0], state[1]);
                slope[1] = heat.AdiabaticRise * slope[0] - cooling / (mass * heat.Capacity) * (state[1] - ambient);
            },
            [kinetics.StartConversion, start], [0, LongestTime], Tolerance, state => state[0] >= Complete || (state[0] >= NearlyCured && state[1] < ambient + 1));
        (PeakTime, PeakTemperature) = Peak(SlopeAt);
        if (cooling == 0) (PeakTime, PeakTemperature) = (double.PositiveInfinity, start + heat.AdiabaticRise * (1 - kinetics.StartConversion));

        double SlopeAt(double time)
        {
            double[] state = trajectory.At(time);
            return heat.AdiabaticRise * kinetics.RateAt(state[0], state[1]) - cooling / (mass * heat.Capacity) * (state[1] - ambient);
        }
    }

    /// <summary>Highest temperature [K].</summary>
    public double PeakTemperature { get; }

    /// <summary>When it is that warm, from mixing [s]; +∞ where no heat leaves the pot.</summary>
    public double PeakTime { get; }

    /// <summary>When the pot gels, from mixing [s]; +∞ when it does not within twelve days.</summary>
    public double GelTime => trajectory.WhenReaches(0, kinetics.GelConversion);

    /// <summary>Whether it gets too hot for the number to mean anything.</summary>
    public bool RunsAway => PeakTemperature > RunawayAbove;

    /// <summary>Temperature of the pot [K].</summary>
    /// <param name="time">Time from mixing [s], at least 0.</param>
    public double TemperatureAt(double time) => trajectory.At(time)[1];

    /// <summary>Degree of cure in the pot [-].</summary>
    /// <param name="time">Time from mixing [s], at least 0.</param>
    public double ConversionAt(double time) => trajectory.At(time)[0];

    private (double Time, double Temperature) Peak(Func<double, double> slopeAt)
    {
        IReadOnlyList<double> times = trajectory.Times;
        int warmest = Enumerable.Range(0, times.Count).MaxBy(node => TemperatureAt(times[node]));
        double time = warmest == 0 ? 0
            : Trajectory.WhenTurns(times[warmest - 1], times[Math.Min(warmest + 1, times.Count - 1)], time => -slopeAt(time));
        return (time, TemperatureAt(time));
    }
}

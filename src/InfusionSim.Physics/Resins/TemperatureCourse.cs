namespace InfusionSim.Physics.Resins;

/// <summary>The temperature that resin and panel see: straight lines between given points, level before the first and after the last.</summary>
/// <remarks>Thin cloth on a tool takes the temperature of the tool within minutes (common practice); the pot is taken as warm as the panel.</remarks>
public sealed class TemperatureCourse
{
    private readonly double[] times;

    private readonly double[] temperatures;

    /// <summary>A course through points.</summary>
    /// <param name="times">Times from the opening of the first feed [s], rising.</param>
    /// <param name="temperatures">Temperature at each of them [K], above 0.</param>
    public TemperatureCourse(IReadOnlyList<double> times, IReadOnlyList<double> temperatures)
    {
        ArgumentNullException.ThrowIfNull(times);
        ArgumentNullException.ThrowIfNull(temperatures);
        if (times.Count == 0 || times.Count != temperatures.Count) throw new ArgumentException("A course needs one temperature for each time, at least one.", nameof(times));
        for (int k = 1; k < times.Count; k++)
            if (!(times[k] > times[k - 1])) throw new ArgumentException("The times must rise.", nameof(times));
        if (temperatures.Any(static kelvin => !(kelvin > 0))) throw new ArgumentException("A temperature must lie above 0 K.", nameof(temperatures));
        (this.times, this.temperatures) = ([.. times], [.. temperatures]);
    }

    /// <summary>One temperature for ever.</summary>
    /// <param name="temperature">Temperature [K], above 0.</param>
    public TemperatureCourse(double temperature) : this([0], [temperature])
    {
    }

    /// <summary>Whether it never changes.</summary>
    public bool IsLevel => temperatures.All(kelvin => kelvin == temperatures[0]);

    /// <summary>Lowest temperature [K].</summary>
    public double Coldest => temperatures.Min();

    /// <summary>Highest temperature [K].</summary>
    public double Warmest => temperatures.Max();

    /// <summary>Times at which it bends, from the opening of the first feed [s], ascending; empty where it is level.</summary>
    public IReadOnlyList<double> Kinks => IsLevel ? [] : times;

    /// <summary>Temperature [K].</summary>
    /// <param name="time">Time from the opening of the first feed [s]; before it counts below 0.</param>
    public double At(double time)
    {
        if (time <= times[0]) return temperatures[0];
        if (time >= times[^1]) return temperatures[^1];
        int found = Array.BinarySearch(times, time);
        int before = found >= 0 ? found : ~found - 1;
        if (before == times.Length - 1) return temperatures[^1];
        return temperatures[before] + (temperatures[before + 1] - temperatures[before]) * (time - times[before]) / (times[before + 1] - times[before]);
    }
}

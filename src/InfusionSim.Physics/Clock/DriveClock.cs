namespace InfusionSim.Physics.Clock;

/// <summary>The drive clock θ = ∫ Δp/μ dt [-], counted from the opening of the first feed: the bridge between where the resin goes and when.</summary>
/// <remarks>
/// With a viscosity that is the same everywhere, the front depends on θ alone, so another resin or vacuum is another
/// clock on the same flow. Here viscosity and pressures are constant, so θ = (Δp/μ) t. Derived by substituting θ for t in
/// Darcy's law with a front.
/// </remarks>
public sealed class DriveClock
{
    /// <summary>Makes the clock of a resin under a bag.</summary>
    /// <param name="resin">The resin; viscosity above 0.</param>
    /// <param name="bag">The bag; ambient pressure above the pressure under the bag.</param>
    /// <exception cref="ArgumentException">When the pressures leave nothing to drive the resin.</exception>
    public DriveClock(Resin resin, Bag bag)
    {
        ArgumentNullException.ThrowIfNull(resin);
        ArgumentNullException.ThrowIfNull(bag);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(resin.Viscosity);
        if (!(bag.Ambient > bag.Pressure)) throw new ArgumentException("The ambient pressure must lie above the pressure under the bag.", nameof(bag));
        RatePerSecond = (bag.Ambient - bag.Pressure) / resin.Viscosity;
        GelTime = resin.GelTime - resin.MixToOpen;
        GelClock = RatePerSecond * Math.Max(0, GelTime);
    }

    /// <summary>Clock per second [1/s].</summary>
    public double RatePerSecond { get; }

    /// <summary>When the resin gels, from the opening of the first feed [s].</summary>
    public double GelTime { get; }

    /// <summary>Drive clock at gel [-]; beyond it nothing flows.</summary>
    public double GelClock { get; }

    /// <summary>Drive clock at a time [-].</summary>
    /// <param name="time">Time from opening [s], at least 0.</param>
    public double ClockAt(double time) => RatePerSecond * time;

    /// <summary>Time at a drive clock [s]; +∞ stays +∞ and NaN stays NaN.</summary>
    /// <param name="clock">Drive clock [-], at least 0.</param>
    public double TimeAt(double clock) => clock / RatePerSecond;
}

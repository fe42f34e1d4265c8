using InfusionSim.Numerics.Integration;

namespace InfusionSim.Physics.Resins;

/// <summary>A rate summed up from mixing on along the temperatures that the resin sees: ∫ k(T) dt [-].</summary>
internal sealed class ThermalAge
{
    private readonly double mixing;

    private readonly double lastKink;

    private readonly double lastRate;

    private readonly RunningIntegral? before;

    /// <summary>Sums up a rate.</summary>
    public ThermalAge(ThermalRate rate, TemperatureCourse? temperature, double mixToOpen)
    {
        double[] breaks = [-mixToOpen, .. (temperature?.Kinks ?? []).Where(kink => kink > -mixToOpen)];
        (mixing, lastKink) = (-mixToOpen, breaks[^1]);
        lastRate = RateAt(lastKink);
        if (breaks.Length > 1) before = new(RateAt, breaks);

        double RateAt(double time) => rate.Rate / rate.Law.FactorAt(temperature, time);
    }

    /// <summary>The sum up to a time from the opening of the first feed.</summary>
    public double At(double time) => before is null ? lastRate * (time - mixing)
        : time > lastKink ? before.Whole + lastRate * (time - lastKink)
        : before.At(time);

    /// <summary>When the sum reaches a value, from the opening of the first feed.</summary>
    public double TimeOf(double value) => before is null ? mixing + value / lastRate
        : value > before.Whole ? lastKink + (value - before.Whole) / lastRate
        : before.Where(value);
}

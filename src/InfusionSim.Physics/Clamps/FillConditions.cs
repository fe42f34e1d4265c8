using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Clamps;

/// <summary>What is done during a fill, and what drives it and leaks in: all that the course of the resin depends on besides its network.</summary>
/// <param name="Rules">What is done with clamps and vacuum; null for nothing.</param>
/// <param name="Bag">The pressures, for gas that is sealed in and pushes back; null leaves it out of account, as does a slope.</param>
/// <param name="Leak">What leaks into pockets, given the drive clocks of the moments that have come; null for nothing.</param>
public sealed record FillConditions(ClampRules? Rules = null, Bag? Bag = null, Func<Func<Moment, double>, PocketLeak>? Leak = null)
{
    /// <summary>Nothing is done and sealed gas is left out of account.</summary>
    public static FillConditions None { get; } = new();

    /// <summary>The conditions of an infusion.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="resin">What flows; only its clock counts, at clamped minutes and for a leak.</param>
    /// <param name="bag">What drives it.</param>
    public static FillConditions Of(Panel panel, Resin resin, Bag bag)
    {
        ArgumentNullException.ThrowIfNull(bag);
        return new(ClampRules.Of(panel, bag, (time, clockOf) => new DriveClock(resin, bag, clockOf).ClockAt(time)), bag, LeakOf(resin, bag));
    }

    private static Func<Func<Moment, double>, PocketLeak>? LeakOf(Resin resin, Bag bag)
    {
        if (bag.Leak is not { Throughput: > 0 } leak) return null;
        return clockOf =>
        {
            DriveClock clock = new(resin, bag, clockOf);
            return new PocketLeak(leak.Throughput, clock.TimeAt, clock.GelClock);
        };
    }
}

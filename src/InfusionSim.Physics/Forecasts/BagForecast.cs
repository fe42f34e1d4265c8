using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Forecasts;

/// <summary>What becomes of the vacuum: what leaks in, what the pump holds against it, and whether the resin boils.</summary>
public sealed record BagForecast
{
    // Temperature of the air that leaks in where none is given [K]; its viscosity changes by 0.3 % a degree.
    private const double UsualRoom = 293.15;

    /// <summary>Nothing known of pump, leak and volatiles.</summary>
    public static BagForecast Nothing { get; } = new();

    /// <summary>Deepest vacuum under the bag from opening on [Pa absolute].</summary>
    public double Deepest { get; init; }

    /// <summary>Pressure that the pump holds against the leak [Pa absolute]; null unless both are given.</summary>
    public double? Held { get; init; }

    /// <summary>How long the pump takes to draw the bag down from the pressure of the shop [s]; +∞ when it never does.</summary>
    /// <remarks>Null when pump or volume are not known.</remarks>
    public double? PumpDown { get; init; }

    /// <summary>Pressure in the dry cloth when the first feed opens, the leak spread over it [Pa absolute].</summary>
    /// <remarks>Null without a leak, and when no air can leave.</remarks>
    public double? DryCloth { get; init; }

    /// <summary>How long what leaks in takes to fill all pores with air of the shop's pressure [s], were none of it drawn off; null without a leak.</summary>
    /// <remarks>Less than the time to gel: air that is cut off from the pump drives the resin out again. Ambient pressure times pore volume over the leak, derived.</remarks>
    public double? PoresFilledIn { get; init; }

    /// <summary>Absolute pressure below which the resin boils [Pa]; null when no volatile is given, or no temperature.</summary>
    public double? BoilsBelow { get; init; }

    /// <summary>Whether that pressure rests on vapour pressures outside the range they were measured in.</summary>
    public bool BoilingIsExtrapolated { get; init; }

    /// <summary>Whether the vacuum is so deep that the resin may boil.</summary>
    public bool MayBoil => BoilsBelow is double limit && limit > Deepest;

    /// <summary>Judges a bag.</summary>
    /// <param name="bag">The bag.</param>
    /// <param name="resin">The resin.</param>
    /// <param name="dryCloth">How hard it is for gas to leave the dry cloth; null when no leak is given or no air can leave.</param>
    /// <param name="poreVolume">All that resin can fill [m³].</param>
    public static BagForecast Of(Bag bag, Resin resin, DryRegionPressure? dryCloth, double poreVolume)
    {
        ArgumentNullException.ThrowIfNull(bag);
        ArgumentNullException.ThrowIfNull(resin);
        Volatiles? boiling = resin is { Volatiles.Count: > 0, Temperature: TemperatureCourse course } ? new(resin.Volatiles, course.Warmest) : null;
        return new()
        {
            Deepest = bag.Steps.Select(static step => step.Pressure).Append(bag.Pressure).Min(),
            Held = bag.Leak is GasLeak leak ? bag.Pump?.HeldAgainst(leak) : null,
            PumpDown = bag is { Pump: VacuumPump pump, DrawnVolume: double volume }
                ? pump.TimeToDraw(volume, bag.Ambient, bag.Pressure, bag.Leak ?? default)
                : null,
            DryCloth = bag.Leak is GasLeak inward ? dryCloth?.PressureWith(bag.Pressure, inward, resin.Temperature?.At(0) ?? UsualRoom) : null,
            PoresFilledIn = bag.Leak is { Throughput: > 0 } fast ? bag.Ambient * poreVolume / fast.Throughput : null,
            BoilsBelow = boiling?.BubblePressure,
            BoilingIsExtrapolated = boiling?.IsExtrapolated ?? false,
        };
    }
}

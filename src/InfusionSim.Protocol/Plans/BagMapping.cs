using InfusionSim.Physics.Vacuum;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Turns vacuum, pump and leak of a plan into what the physics takes.</summary>
internal static class BagMapping
{
    /// <summary>The bag of a sound plan with its defaults.</summary>
    public static Physics.Clock.Bag ToBag(Contract.Bag bag) => new(
        UnitConversion.PascalFromMbar(bag.PressureMbarAbs), UnitConversion.PascalFromMbar(bag.AmbientMbarAbs))
    {
        Steps = ClampMapping.ToSteps(bag),
        Leak = LeakOf(bag),
        Pump = PumpOf(bag),
        DrawnVolume = bag.DropTest is { HasVolumeL: true } test ? UnitConversion.CubicMetresFromLitres(test.VolumeL) : null,
    };

    /// <summary>What leaks in, as measured or as the drop test tells; null when neither is given, or not as it must be.</summary>
    public static GasLeak? LeakOf(Contract.Bag bag)
    {
        if (bag is { HasLeakMbarLPerS: true, LeakMbarLPerS: >= 0 }) return new GasLeak(UnitConversion.ThroughputFromMbarLPerS(bag.LeakMbarLPerS));
        if (bag.DropTest is not { RiseMbar: >= 0, Minutes: > 0, VolumeL: > 0 } test) return null;
        double rise = UnitConversion.PascalFromMbar(test.RiseMbar), duration = UnitConversion.SecondsFromMin(test.Minutes);
        return new DropTest(rise, duration, UnitConversion.CubicMetresFromLitres(test.VolumeL)).Leak;
    }

    /// <summary>The pump; null when none is given, or not as it must be.</summary>
    public static VacuumPump? PumpOf(Contract.Bag bag) => bag.Pump is { SpeedM3PerH: > 0, LowestMbarAbs: >= 0 } pump
        ? new VacuumPump(UnitConversion.CubicMetresPerSecondFromPerHour(pump.SpeedM3PerH), UnitConversion.PascalFromMbar(pump.LowestMbarAbs))
        : null;

    /// <summary>Absolute pressure that the pump holds against the leak [mbar]; null unless both are known.</summary>
    public static double? HeldMbarAbs(Contract.Bag bag)
    {
        if (LeakOf(bag) is not GasLeak leak || PumpOf(bag) is not VacuumPump pump) return null;
        double held = UnitConversion.MbarFromPascal(pump.HeldAgainst(leak));
        return double.IsFinite(held) ? held : null;
    }
}

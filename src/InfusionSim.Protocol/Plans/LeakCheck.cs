using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks what pump, leak, barometer and height of the shop say together.</summary>
internal static class LeakCheck
{
    /// <summary>Share by which a pressure may lie below what the pump holds before it is said [-]: a gauge reads no finer (our own judgement).</summary>
    private const double GaugeReads = 0.01;

    /// <summary>Share by which barometer and height may disagree [-]: more than the weather does (our own judgement).</summary>
    private const double Weather = 0.05;

    /// <summary>Checks the bag of a plan.</summary>
    /// <param name="given">The plan as it was given.</param>
    /// <param name="plan">The plan with its defaults filled in.</param>
    /// <param name="faults">Takes the faults.</param>
    /// <param name="warnings">Takes what looks odd.</param>
    public static void Run(InfusionPlan given, InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        if (plan.Bag is not Bag bag) return;
        if (bag is { HasLeakMbarLPerS: true, DropTest: not null })
            faults.Add("bag.leakMbarLPerS", "bag gives both leakMbarLPerS and dropTest; give one of them: the leak follows from the drop test.");
        if (faults.HasUnder("bag") || faults.HasUnder("shop")) return;
        if (BagMapping.HeldMbarAbs(bag) is double held) CheckHeld(given.Bag, bag, held, faults, warnings);
        CheckBarometer(given, warnings);
    }

    private static void CheckHeld(Bag given, Bag bag, double held, FaultList faults, List<string> warnings)
    {
        string against = $"against a leak of {LeakOf(bag)} a pump of {Numbers.Say(bag.Pump.SpeedM3PerH)} m³/h holds {Numbers.Figures(held, 3)} mbar";
        if (held >= bag.AmbientMbarAbs && !given.HasPressureMbarAbs)
            faults.Add("bag.pressureMbarAbs", $"bag.pressureMbarAbs is left out, but {against}: no vacuum. Find the leak first.");
        else if (given.HasPressureMbarAbs && bag.PressureMbarAbs < held * (1 - GaugeReads))
            warnings.Add($"bag.pressureMbarAbs is {Numbers.Say(bag.PressureMbarAbs)} mbar, deeper than the pump can hold: {against}. "
                + $"Find the leak, or write {Numbers.Figures(held, 3)}.");
    }

    // A weather report gives the pressure as it would be at the level of the sea.
    private static void CheckBarometer(InfusionPlan given, List<string> warnings)
    {
        if (given is not { Bag.HasAmbientMbarAbs: true, Shop.HasAltitudeM: true }) return;
        double typed = given.Bag.AmbientMbarAbs, expected = PlanDefaults.AmbientMbarAbs(new InfusionPlan { Shop = given.Shop });
        if (Math.Abs(typed - expected) <= Weather * expected) return;
        warnings.Add($"bag.ambientMbarAbs is {Numbers.Say(typed)} mbar, but {Numbers.Say(given.Shop.AltitudeM)} m above the sea the air has about "
            + $"{Numbers.Figures(expected, 3)}. {Numbers.Say(typed)} is used; "
            + "a weather report gives the pressure at the level of the sea, so leave ambientMbarAbs out for that of the height.");
    }

    private static string LeakOf(Bag bag) =>
        $"{Numbers.Say(Numbers.Rounded(UnitConversion.MbarLPerSFromThroughput(BagMapping.LeakOf(bag)!.Value.Throughput), 3))} mbar·L/s";
}

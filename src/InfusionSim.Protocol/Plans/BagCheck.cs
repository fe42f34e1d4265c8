using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks that there is a vacuum to drive the resin, and that it reads like an absolute pressure.</summary>
internal static class BagCheck
{
    /// <summary>Share of the air's pressure below which a bag has almost no vacuum [-] (our own judgement).</summary>
    private const double HardlyAnyVacuum = 0.2;

    /// <summary>Pressure below which a workshop pump is hardly ever [mbar] (our own judgement).</summary>
    private const double DeepVacuumMbar = 0.2;

    /// <summary>Checks the bag of a plan whose defaults are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        const string Path = "bag.pressureMbarAbs";
        if (plan.Bag is not { HasPressureMbarAbs: true } bag || faults.HasUnder("bag")) return;
        double pressure = bag.PressureMbarAbs, ambient = bag.AmbientMbarAbs;
        string gauge = $"If your gauge shows −{Numbers.Say(pressure)} mbar, the absolute pressure is {Numbers.Say(ambient - pressure)} mbar.";
        if (pressure >= ambient)
        {
            faults.Add(Path, $"{Path} is {Numbers.Say(pressure)} mbar, not below the air around the bag ({Numbers.Say(ambient)} mbar): nothing drives the resin. "
                + $"It must lie between 0 and {Numbers.Say(ambient)} mbar; a good vacuum is below 50.");
        }
        else if (ambient - pressure < HardlyAnyVacuum * ambient)
        {
            warnings.Add($"{Path} is {Numbers.Say(pressure)}: almost no vacuum (ambient {Numbers.Say(ambient)}). {gauge}");
        }
        else if (pressure is > 0 and < DeepVacuumMbar)
        {
            warnings.Add($"{Path} is {Numbers.Say(pressure)}: deeper than a workshop pump draws. If your gauge shows {Numbers.Say(pressure)} bar absolute, write {Numbers.Say(pressure * 1000)}.");
        }
    }
}

using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Plans;

/// <summary>Checks the components of the resin that may boil: what they are, how much of each, and that a temperature is known.</summary>
internal static class VolatileCheck
{
    /// <summary>Checks the resin of a plan whose defaults are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults)
    {
        if (plan.Resin is not { Volatiles.Count: > 0 } resin) return;
        for (int k = 0; k < resin.Volatiles.Count; k++) CheckKind(resin, k, faults);
        if (!faults.HasUnder("resin.volatiles"))
        {
            double sum = resin.Volatiles.Sum(component => component.MoleFraction);
            if (sum > 1)
                faults.Add("resin.volatiles", $"resin.volatiles have {Numbers.Say(sum)} of the molecules together; they are fractions, at most 1 in all.");
        }

        if (plan.Shop is not ({ HasTemperatureDegC: true } or { Temperatures.Count: > 0 }) && !faults.HasUnder("shop"))
            faults.Add("shop.temperatureDegC", "shop.temperatureDegC is missing; whether resin.volatiles boil depends on it. "
                + "Give it in °C, for example \"shop\": { \"temperatureDegC\": 20 }.");
    }

    private static void CheckKind(Resin resin, int index, FaultList faults)
    {
        string path = $"resin.volatiles[{index}].kind";
        VolatileKind kind = resin.Volatiles[index].Kind;
        if (faults.HasAt(path)) return;
        if (kind == VolatileKind.Unspecified)
            faults.Add(path, $"{path} is missing; it must be VOLATILE_KIND_STYRENE or VOLATILE_KIND_WATER.");
        else if (resin.Volatiles.Take(index).Any(before => before.Kind == kind))
            faults.Add(path, $"{path} is named twice; give each component once.");
    }
}

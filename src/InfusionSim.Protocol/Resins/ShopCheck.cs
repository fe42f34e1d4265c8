using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Checks how warm it is, and whether the resin card knows anything of such temperatures.</summary>
internal static class ShopCheck
{
    /// <summary>Checks the shop of a plan whose defaults are filled in.</summary>
    public static void Run(InfusionPlan plan, FaultList faults, List<string> warnings)
    {
        if (plan.Shop is not Shop shop) return;
        if (shop.HasTemperatureDegC && shop.Temperatures.Count > 0)
            faults.Add("shop.temperatures", "shop gives both temperatureDegC and temperatures; give one of them: a course of temperatures says all that the other says.");
        for (int k = 1; k < shop.Temperatures.Count; k++)
        {
            if (!(shop.Temperatures[k].AtMin <= shop.Temperatures[k - 1].AtMin)) continue;
            faults.Add($"shop.temperatures[{k}].atMin", $"shop.temperatures[{k}].atMin is {Numbers.Say(shop.Temperatures[k].AtMin)} min, not after the row before it ({Numbers.Say(shop.Temperatures[k - 1].AtMin)} min). Give the rows in order of time.");
        }

        if (plan.Resin is Resin card && !faults.HasUnder("shop") && !faults.HasUnder("resin")) CheckRanges(card, Temperatures(shop), faults, warnings);
    }

    /// <summary>The temperatures that a plan names, each with its path.</summary>
    public static IReadOnlyList<(string Path, double DegC)> Temperatures(Shop? shop) => shop switch
    {
        { Temperatures.Count: > 0 } => [.. shop.Temperatures.Select((row, k) => ($"shop.temperatures[{k}].temperatureDegC", row.TemperatureDegC))],
        { HasTemperatureDegC: true } => [("shop.temperatureDegC", shop.TemperatureDegC)],
        _ => [],
    };

    private static void CheckRanges(Resin card, IReadOnlyList<(string Path, double DegC)> temperatures, FaultList faults, List<string> warnings)
    {
        if (temperatures.Count == 0) return;
        foreach (MeasuredRange range in MeasuredRange.Of(card))
        {
            (string path, double degC) = temperatures.MaxBy(one => Math.Max(range.FromDegC - one.DegC, one.DegC - range.ToDegC));
            string known = range.FromDegC == range.ToDegC ? $"at {Numbers.Say(range.FromDegC)} °C" : $"from {Numbers.Say(range.FromDegC)} to {Numbers.Say(range.ToDegC)} °C";
            string measured = $"{path} is {Numbers.Say(degC)} °C, but the resin was measured {known} ({range.Path})";
            if (range.IsRefused(degC))
            {
                faults.Add(path, $"{measured}: too far to carry over. It must lie between {Numbers.Say(range.FromDegC - range.RefusedDegC)} and {Numbers.Say(range.ToDegC + range.RefusedDegC)} °C. {range.Advice}");
            }
            else if (range.IsExtrapolated(degC))
            {
                warnings.Add($"{measured}: carried over beyond what was measured. {range.Advice}");
            }
        }
    }
}

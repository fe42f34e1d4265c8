using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The line about the vacuum: what leaks in, what the pump holds against it, and below which pressure the resin boils.</summary>
internal static class BagWords
{
    /// <summary>The line; none when nothing is known of leak and volatiles.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast, InfusionPlan plan)
    {
        if (forecast.Bag is not BagForecast bag) yield break;
        if (bag.HasLeakMbarLPerS) yield return new FillLine("Bag", Leak(bag, plan));
        if (!bag.HasBoilsBelowMbarAbs) yield break;
        bool boils = forecast.Findings.Any(static finding => finding.Kind == FindingKind.MayBoil);
        string verdict = boils ? ": it may bubble near the vents" : "";
        yield return new FillLine(
            bag.HasLeakMbarLPerS ? "" : "Bag",
            $"the resin boils below {Mbar(bag.BoilsBelowMbarAbs)}{Extrapolated(bag)}; the bag has {Mbar(plan.Bag.PressureMbarAbs)}{verdict}");
    }

    /// <summary>The sentence about boiling.</summary>
    public static string MayBoil(Finding finding, FillForecast forecast, InfusionPlan plan)
    {
        if (!finding.HasAmount) return "A component of the resin may boil under this vacuum and leave voids. Ask the data sheet for the lowest pressure.";
        string extrapolated = forecast.Bag is BagForecast bag ? Extrapolated(bag) : "";
        return $"{Components(plan)} may boil under {Mbar(DeepestOf(plan))} and leave voids: stay above {Mbar(finding.Amount)}{extrapolated}, better with a margin. "
            + "What the resin's data sheet says of the vacuum comes first.";
    }

    private static string Leak(BagForecast bag, InfusionPlan plan)
    {
        string held = bag.HasHeldMbarAbs ? $"; the pump holds {Mbar(bag.HeldMbarAbs)} against it" : "";
        string drawn = bag.HasPumpDownS ? $", drawn down in {Amounts.Time(bag.PumpDownS)}" : "";
        string dry = bag.HasDryClothMbarAbs ? $"; air in the dry cloth at about {Mbar(bag.DryClothMbarAbs)}, the vents at {Mbar(plan.Bag.PressureMbarAbs)}" : "";
        return $"leaks {Amount(bag.LeakMbarLPerS)} mbar·L/s ({Amount(bag.LeakCm3PerMin)} cm³ of air a minute){held}{drawn}{dry}";
    }

    private static string Components(InfusionPlan plan)
    {
        string[] names = [.. plan.Resin.Volatiles.Select(static component => component.Kind == VolatileKind.Water ? "water" : "styrene").Distinct()];
        return names.Length switch
        {
            0 => "A component of the resin",
            1 => $"The {names[0]} in the resin",
            _ => $"The {string.Join(" and ", names)} in the resin together",
        };
    }

    private static double DeepestOf(InfusionPlan plan) => plan.Bag.Steps.Select(static step => step.PressureMbarAbs).Append(plan.Bag.PressureMbarAbs).Min();

    private static string Extrapolated(BagForecast bag) => bag.BoilingIsExtrapolated ? " (extrapolated)" : "";

    private static string Mbar(double mbar) => $"{Amount(mbar)} mbar";

    private static string Amount(double value) => Numbers.Say(Numbers.Rounded(value, value >= 100 ? 3 : 2));
}

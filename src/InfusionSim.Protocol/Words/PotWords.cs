using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The lines of a mix sheet about its pots: batches, when to pour, how warm they get, when they are empty.</summary>
internal static class PotWords
{
    /// <summary>Pots that are told one by one [-]; of the rest only the number is.</summary>
    private const int MostTold = 6;

    /// <summary>Pours whose time is told [-].</summary>
    private const int MostPours = 8;

    /// <summary>The lines of every pot.</summary>
    public static IEnumerable<FillLine> Lines(MixSheet sheet, InfusionPlan plan)
    {
        PotMix[] pots = [.. sheet.Pots.Where(pot => pot.Pours.Count > 0)];
        bool isOne = pots.Length == 1;
        foreach (PotMix pot in pots.Take(MostTold))
        {
            string name = isOne ? "" : $"{pot.Name}: ";
            yield return new FillLine("Pour", name + BatchText(pot, isOne));
            if (plan.Mix.HasLargestBatchG && pot.Batch.MixedG > 1.001 * plan.Mix.LargestBatchG)
                yield return new FillLine("", $"more than mix.largestBatchG, {Amounts.OnScale(plan.Mix.LargestBatchG)}, which would take more than {Numbers.Count(pot.Pours.Count)} batches");
            if (pot.Pours.Count > 1) yield return new FillLine("", TimesText(pot));
            if (pot.HasRunsDryTimeS)
                yield return new FillLine("", $"the plan has only {Amounts.OnScale(pot.HoldsG)} in it: dry at {Amounts.Time(pot.RunsDryTimeS)}");
            if (pot.Heat is not null) yield return new FillLine("Heat", name + HeatText(pot, plan));
            yield return new FillLine("Empty", name + EmptyText(pot));
        }

        if (pots.Length > MostTold) yield return new FillLine("", $"and {pots.Length - MostTold} pots more (--json lists all)");
        if (pots.All(pot => pot.Heat is null))
            yield return new FillLine("Heat", UnknownHeatText(pots, plan));
    }

    private static string UnknownHeatText(PotMix[] pots, InfusionPlan plan)
    {
        string missing = plan.Resin.Kinetics is null ? "resin.kinetics with heatOfReactionJPerKg" : "resin.kinetics.heatOfReactionJPerKg";
        double largest = pots.Select(pot => pot.Batch.MixedG).DefaultIfEmpty().Max();
        string sooner = plan.Resin.HasGelTimeMassG && largest > plan.Resin.GelTimeMassG
            ? $"The gel time was measured on {Amounts.OnScale(plan.Resin.GelTimeMassG)}: {Amounts.OnScale(largest)} in a pot gel sooner"
            : "A full pot gels much sooner than thin cloth";
        return $"not known without {missing}. {sooner}";
    }

    private static string BatchText(PotMix pot, bool isOne)
    {
        if (pot.Pours.Count > 1) return $"{pot.Pours.Count} batches of {MixWords.Text(pot.Batch)} each";
        return isOne ? "all at once" : $"{MixWords.Text(pot.All)}, all at once";
    }

    private static string TimesText(PotMix pot)
    {
        string[] timed =
        [
            .. pot.Pours.Select((pour, k) => (pour, k)).Skip(1).Where(one => one.pour.HasTimeS).Take(MostPours)
                .Select(one => one.pour.TimeS < 1 ? $"batch {one.k + 1} at once" : $"batch {one.k + 1} by {Amounts.Time(one.pour.TimeS)} (fast case {Amounts.Time(one.pour.EarlyTimeS)})"),
        ];
        int kept = pot.Pours.Count(pour => !pour.HasTimeS), more = pot.Pours.Count - 1 - kept - timed.Length;
        string text = timed.Length > 0 ? $"in the pot after opening: {string.Join(", ", timed)}{(more > 0 ? $" and {more} more" : "")}" : "";
        string held = kept == 1 ? "the last batch is reserve: mix it only when it is needed" : $"the last {kept} batches are reserve: mix them only when they are needed";
        if (kept > 0) text += text.Length > 0 ? "; " + held : held;
        return timed.Length > 0 ? text + ". All of it is reckoned as old as the first batch" : text;
    }

    private static string HeatText(PotMix pot, InfusionPlan plan)
    {
        PotHeat heat = pot.Heat;
        string stay = $"in the {Amounts.Time(60 * heat.StayMin)} that {Amounts.OnScale(pot.Batch.MixedG)} stand in the pot in the slow case";
        string drawn = heat.RunsAway ? $"RUNS AWAY {stay}: above 200 °C"
            : heat.IsBearable ? $"up to {Degrees(heat.WarmestDegC)} {stay}"
            : $"up to {Degrees(heat.WarmestDegC)} {stay}, above the {Degrees(plan.Mix.WarmestPotDegC)} that you allow";
        string cure = heat.IsBearable ? "" : $". {(plan.Mix.HasLargestBatchG ? "Smaller batches, a" : "A")} shallower pot or a slower hardener";
        string gel = heat.HasGelsLeftStandingMin ? $"gels {Amounts.Time(60 * heat.GelsLeftStandingMin)} after mixing and " : "";
        return $"{drawn}{cure}. Left standing it {gel}{(heat.RunsAwayLeftStanding ? "runs away: above 200 °C" : $"reaches {Degrees(heat.LeftStandingDegC)}")}";
    }

    private static string EmptyText(PotMix pot) => pot.HasEmptyTimeS
        ? $"down to its rest {Amounts.Time(pot.EmptyTimeS)} after opening while the vents stay open"
        : "never: when the panel is full nothing more is drawn, and the reserve stays in the pot";

    private static string Degrees(double celsius) => $"{Numbers.Say(Math.Round(celsius))} °C";
}

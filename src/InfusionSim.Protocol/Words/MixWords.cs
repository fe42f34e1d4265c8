using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The mix sheet in lines that somebody reads beside the scale.</summary>
public static class MixWords
{
    /// <summary>Weight below which an amount is not told [g].</summary>
    private const double Nothing = 0.05;

    /// <summary>The lines of the sheet.</summary>
    /// <param name="plan">The plan, with its defaults.</param>
    /// <param name="sheet">The sheet.</param>
    /// <param name="forecast">The forecast that it was reckoned from.</param>
    public static IReadOnlyList<FillLine> Lines(InfusionPlan plan, MixSheet sheet, FillForecast forecast)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(forecast);
        return
        [
            new FillLine("MIX", Text(sheet.All)),
            .. RatioLine(sheet),
            new FillLine("Where", WhereText(plan, sheet)),
            new FillLine("On top", OnTopText(plan, sheet)),
            .. PotWords.Lines(sheet, plan),
            new FillLine("Fill", FillText(forecast, plan)),
            .. sheet.Cautions.Select((caution, k) => new FillLine(k == 0 ? "Caution" : "", caution)),
        ];
    }

    /// <summary>An amount, and what to weigh out for it where that is known.</summary>
    internal static string Text(MixAmount amount) => amount.HasResinG
        ? $"{Amounts.OnScale(amount.MixedG)}: {Amounts.OnScale(amount.ResinG)} of resin and {Amounts.OnScale(amount.HardenerG)} of hardener"
        : $"{Amounts.OnScale(amount.MixedG)} of resin and hardener together";

    private static IEnumerable<FillLine> RatioLine(MixSheet sheet)
    {
        if (!sheet.All.HasResinG)
            yield return new FillLine("", "to part them, give resin.mixRatio.partsByMass: parts of hardener to 100 of resin, as the data sheet says");
    }

    private static string WhereText(InfusionPlan plan, MixSheet sheet)
    {
        (double Grams, string Place)[] all =
        [
            (sheet.InPartG, "in the part"), (sheet.InMeshG, ResinWords.MeshName(plan)), (sheet.InLinesG, "in feed lines and their hoses"), (sheet.OutOfVentsG, "out of the vents"),
        ];
        string[] told = [.. all.Where(one => one.Grams >= Nothing).Select(one => $"{Amounts.OnScale(one.Grams)} {one.Place}")];
        string sum = told.Length > 1 ? $": {Amounts.OnScale(all.Sum(one => one.Grams))} drawn" : "";
        return string.Join(", ", told) + sum + (sheet.InLinesG < Nothing ? "; the plan names no hose, add what yours hold" : "");
    }

    private static string OnTopText(InfusionPlan plan, MixSheet sheet)
    {
        string rest = sheet.Pots.Count(pot => pot.Pours.Count > 0) > 1 ? "stay in the pots" : "stay in the pot";
        return $"{Amounts.OnScale(sheet.ReserveG)} of reserve ({Amounts.Percent(plan.Mix.ReserveFraction)}), {Amounts.OnScale(sheet.PotRestG)} {rest}: a hose that sucks air spoils the panel";
    }

    private static string FillText(FillForecast forecast, InfusionPlan plan)
    {
        FillLine outcome = OutcomeWords.Line(forecast, plan);
        return forecast.Outcome == Outcome.Fills ? outcome.Text : $"{outcome.Label}: {outcome.Text}. The weights are those of a full panel; mend the plan before you mix";
    }
}

using InfusionSim.Cli.Terminal;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using InfusionSim.Protocol.Words;

namespace InfusionSim.Cli.Answers;

/// <summary>Several answers side by side, and what the difference is in words.</summary>
public static class Comparison
{
    /// <summary>The table, a plan in each column.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="width">Letters that a line of the screen holds [-]; null where nobody reads along an edge.</param>
    public static IEnumerable<string> Table(IReadOnlyList<PlanAnswer> answers, int? width = null)
    {
        ArgumentNullException.ThrowIfNull(answers);
        return TextTable.Lines(
        [
            Row("", answer => answer.Name),
            Row("Outcome", answer => answer.Lines(withNext: false)[0].Label),
            Row("Full", Full),
            Row("Likely", Likely),
            Row("Gel margin", Margin),
            Row("Last", Last),
            .. RowIfAny("Tool side", ToolSide),
            .. RowIfAny("Line ends", LineEnds),
            Row("Vents wet", VentsWet),
            Row("Resin out", answer => Amounts.Weight(answer.Forecast.Vents.Sum(vent => vent.ResinOutG))),
            Row("Dry spots", DrySpots),
            Row("Goals", answer => answer.MeetsGoals ? "met" : "not met"),
        ], width);

        IReadOnlyList<string> Row(string label, Func<PlanAnswer, string> cell) => [label, .. answers.Select(cell)];

        IEnumerable<IReadOnlyList<string>> RowIfAny(string label, Func<PlanAnswer, string?> cell) =>
            answers.Any(answer => cell(answer) is not null) ? [Row(label, answer => cell(answer) ?? "-")] : [];
    }

    /// <summary>What the second answer does differently from the first, in sentences.</summary>
    /// <param name="first">The first answer.</param>
    /// <param name="second">The second answer.</param>
    public static IEnumerable<string> Difference(PlanAnswer first, PlanAnswer second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        (FillForecast before, FillForecast after) = (first.Forecast, second.Forecast);
        if (before.HasFillTimeS && after.HasFillTimeS)
        {
            double sooner = before.FillTimeS - after.FillTimeS;
            yield return Math.Abs(sooner) < 0.02 * before.FillTimeS
                ? "Both are full at about the same time."
                : $"It is full {Amounts.Time(Math.Abs(sooner))} {(sooner > 0 ? "sooner" : "later")}: {Amounts.Time(after.FillTimeS)} instead of {Amounts.Time(before.FillTimeS)}.";
        }
        else if (after.HasFillTimeS)
        {
            yield return $"It comes to an end at {Amounts.Time(after.FillTimeS)}; the other never does.";
        }

        (double dryBefore, double dryAfter) = (DryAboveGoal(first), DryAboveGoal(second));
        if (dryBefore > 0 && dryAfter == 0) yield return $"No dry spot above {Amounts.Area(Goal(second))} stays: {Amounts.Area(dryBefore)} stayed dry before.";
        else if (dryBefore == 0 && dryAfter > 0) yield return $"Air stays now: {Amounts.Area(dryAfter)} are dry at the end.";
        else if (dryBefore > 0) yield return $"{Amounts.Area(dryAfter)} stay dry instead of {Amounts.Area(dryBefore)}.";

        if (before.Lag is Lag earlier && after.Lag is Lag later && Math.Abs(later.LargestMin - earlier.LargestMin) > 0.1)
            yield return $"The tool side is up to {Amounts.Time(60 * later.LargestMin)} behind instead of {Amounts.Time(60 * earlier.LargestMin)}.";

        (double outBefore, double outAfter) = (Out(before), Out(after));
        if (Math.Abs(outBefore - outAfter) >= 1)
            yield return $"{Amounts.Weight(outAfter)} of resin leave through the vents instead of {Amounts.Weight(outBefore)}.";
        if (before.HasSpareTimeS && after.HasSpareTimeS && Math.Abs(after.SpareTimeS - before.SpareTimeS) > 30)
            yield return $"{Amounts.Time(Math.Abs(after.SpareTimeS))} to spare before gel instead of {Amounts.Time(Math.Abs(before.SpareTimeS))}.";
    }

    private static string Full(PlanAnswer answer) => answer.Forecast.HasFillTimeS ? Amounts.Time(answer.Forecast.FillTimeS) : $"not full ({Amounts.Percent(answer.Forecast.FilledFraction)})";

    private static string Likely(PlanAnswer answer) => answer.Forecast.Likely switch
    {
        { HasFillTimeFromS: true, HasFillTimeToS: true } band => Amounts.TimeRange(band.FillTimeFromS, band.FillTimeToS),
        { HasFillTimeFromS: true } band => $"{Amounts.Time(band.FillTimeFromS)} to gelling first",
        _ => "-",
    };

    private static string Margin(PlanAnswer answer)
    {
        if (!answer.Forecast.HasGelMarginRatio) return "-";
        string spare = answer.Forecast.HasSpareTimeS ? $" ({Amounts.Time(answer.Forecast.SpareTimeS)} to spare)" : "";
        return $"{Numbers.Figures(answer.Forecast.GelMarginRatio, 2)} times{spare}";
    }

    private static string Last(PlanAnswer answer) =>
        answer.Forecast.LastToFill is null ? "-" : PlaceWords.OfLast(answer.Forecast, answer.Response.FrontMap, answer.Plan);

    private static string? ToolSide(PlanAnswer answer) => answer.Forecast.Lag is Lag lag ? $"up to {Amounts.Time(60 * lag.LargestMin)} behind" : null;

    private static string? LineEnds(PlanAnswer answer)
    {
        FeedForecast[] lines = [.. answer.Forecast.Feeds.Where(feed => feed.Line is not null)];
        return lines.Length == 0 ? null : $"from {Amounts.Percent(lines.Min(feed => feed.Line.EndPressureRatio))} of the pressure";
    }

    private static string VentsWet(PlanAnswer answer)
    {
        VentForecast[] wet = [.. answer.Forecast.Vents.Where(vent => vent.HasArrivalTimeS).OrderBy(vent => vent.ArrivalTimeS)];
        return wet.Length == 0 ? "never" : $"from {Amounts.Time(wet[0].ArrivalTimeS)}, {Amounts.Percent(wet[0].FilledFractionAtArrival)} filled";
    }

    private static string DrySpots(PlanAnswer answer)
    {
        int count = answer.Forecast.DrySpots.Count;
        return count == 0 ? "none" : $"{count}, {Amounts.Area(Dry(answer.Forecast))} in all";
    }

    private static double Dry(FillForecast forecast) => forecast.DrySpots.Sum(spot => spot.AreaMm2);

    private static double DryAboveGoal(PlanAnswer answer) => Dry(answer.Forecast) is var dry && answer.Forecast.DrySpots.Any(spot => spot.AreaMm2 > Goal(answer)) ? dry : 0;

    private static double Goal(PlanAnswer answer) => answer.Plan.Goals.LargestDrySpotMm2;

    private static double Out(FillForecast forecast) => forecast.Vents.Sum(vent => vent.ResinOutG);
}

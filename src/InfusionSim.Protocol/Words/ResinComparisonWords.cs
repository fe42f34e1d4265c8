using InfusionSim.Planning.Resins;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;
using BestTemperature = InfusionSim.Protocol.V1.BestTemperature;

namespace InfusionSim.Protocol.Words;

/// <summary>A comparison of resins in words: which is best by the plan's goals, what each would like to be warmed to, how it was computed.</summary>
public static class ResinComparisonWords
{
    /// <summary>Label of the verdict when a resin meets the goals.</summary>
    public const string Best = "Best";

    /// <summary>Label of the verdict when none does.</summary>
    public const string None = "None";

    // Nearer than that to the end of the range nobody can tell.
    private const double AtTheEdgeDegC = 0.05;

    /// <summary>The lines of the answer, the verdict first.</summary>
    /// <param name="plan">The plan, with its defaults.</param>
    /// <param name="answer">What each resin does.</param>
    public static IReadOnlyList<FillLine> Lines(InfusionPlan plan, CompareResinsResponse answer)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(answer);
        return [Verdict(plan, answer), .. Warmth(plan, answer), FlowLine(answer)];
    }

    /// <summary>How thick a resin is from opening to the end: 0.2 Pa·s, 0.2 to 0.31 Pa·s.</summary>
    /// <param name="resin">The resin on the plan.</param>
    public static string Viscosity(ResinOnPlan resin)
    {
        ArgumentNullException.ThrowIfNull(resin);
        string first = Numbers.Figures(resin.ViscosityAtOpeningPaS, 2);
        if (!resin.HasViscosityAtEndPaS) return $"{first} Pa·s to solid";
        string last = Numbers.Figures(resin.ViscosityAtEndPaS, 2);
        return first == last ? $"{first} Pa·s" : $"{first} to {last} Pa·s";
    }

    /// <summary>Why the flow of a resin had to be followed again; empty where it was shared.</summary>
    /// <param name="sharing">Whether it was shared.</param>
    /// <param name="takenUntil">Time from opening up to which it was taken from that of another resin [s].</param>
    internal static string Because(FlowSharing sharing, double takenUntil) => sharing switch
    {
        FlowSharing.Shared => "",
        FlowSharing.AgainForMinutes when takenUntil > 0 => $"at {Amounts.Time(takenUntil)} the resins stand in different places, and what happens then (a clamp, a change of the vacuum, a leak) sends them different ways",
        FlowSharing.AgainForMinutes => "something happens at a minute (a clamp, a change of the vacuum, a leak), and by then the resins stand in different places",
        FlowSharing.AgainForWeight => "its weight counts on a slope or with a pot at another level, and its density is another",
        _ => throw new ArgumentOutOfRangeException(nameof(sharing), sharing, "No such reason."),
    };

    private static FillLine Verdict(InfusionPlan plan, CompareResinsResponse answer)
    {
        if (answer.HasBestIndex)
        {
            ResinOnPlan best = answer.Resins[answer.BestIndex];
            string among = answer.Resins.Count(resin => resin.MeetsGoals) is var fit && fit > 1 ? $", the quickest to fill of the {fit} that meet the goals" : answer.Resins.Count > 1 ? ", the only one that meets the goals" : " meets the goals";
            return new(Best, $"{best.Name}{among}: full {Amounts.Time(best.Forecast.FillTimeS)} after opening{Band(best.Forecast)}; "
                + $"gel at {Amounts.Time(best.Forecast.GelTimeS)}, {Amounts.Time(best.Forecast.SpareTimeS)} to spare{SlowCase(best.Forecast)}; mix {Amounts.Weight(best.ResinToMixG)}");
        }

        ResinOnPlan nearest = Nearest(answer);
        string who = answer.Resins.Count > 1 ? $"no resin meets the goals; {nearest.Name} comes nearest" : $"{nearest.Name} does not meet the goals";
        return new(None, $"{who}: {Why(plan, nearest)}");
    }

    // Of those that fill the one with the largest margin; else the one that gets furthest.
    private static ResinOnPlan Nearest(CompareResinsResponse answer) =>
        answer.Resins.OrderByDescending(static resin => resin.Forecast.Outcome == Outcome.Fills)
            .ThenByDescending(static resin => resin.Forecast.Outcome == Outcome.Fills ? resin.Forecast.GelMarginRatio : resin.Forecast.FilledFraction).First();

    private static string Why(InfusionPlan plan, ResinOnPlan resin)
    {
        FillForecast forecast = resin.Forecast;
        if (forecast.Outcome != Outcome.Fills) return OutcomeWords.LabelOf(forecast.Outcome) + ", " + OutcomeWords.Line(forecast, plan).Text;
        double asked = plan.Goals is { HasSmallestGelMarginRatio: true } goals ? goals.SmallestGelMarginRatio : PlanDefaults.SmallestGelMarginRatio;
        return forecast.GelMarginRatio < asked
            ? $"time to gel is {Numbers.Figures(forecast.GelMarginRatio, 2)} times the time to fill; you ask for {Numbers.Say(asked)}"
            : $"{Amounts.Weight(forecast.Vents.Sum(vent => vent.ResinOutG))} leave through the vents, more than you allow";
    }

    private static string Band(FillForecast forecast) => forecast.Likely switch
    {
        { HasFillTimeFromS: true, HasFillTimeToS: true } band => $" (two shots in three: {Amounts.TimeRange(band.FillTimeFromS, band.FillTimeToS)})",
        { HasFillTimeFromS: true } band => $" (two shots in three: from {Amounts.Time(band.FillTimeFromS)} to gelling first)",
        _ => "",
    };

    private static string SlowCase(FillForecast forecast)
    {
        if (forecast.Likely is not LikelyBand band) return "";
        return band.HasFillTimeToS ? $", {Amounts.Time(Math.Max(0, forecast.GelTimeS - band.FillTimeToS))} in the slow case" : ", but in the slow case it gels first";
    }

    private static IEnumerable<FillLine> Warmth(InfusionPlan plan, CompareResinsResponse answer)
    {
        double asked = plan.Goals is { HasSmallestGelMarginRatio: true } goals ? goals.SmallestGelMarginRatio : PlanDefaults.SmallestGelMarginRatio;
        bool isFirst = true;
        foreach (ResinOnPlan resin in answer.Resins)
        {
            if (resin.BestTemperature is not BestTemperature best) continue;
            yield return new(isFirst ? "Warmth" : "", $"{resin.Name}: {Warmth(best, asked)}");
            isFirst = false;
        }

        if (!isFirst) yield return new("", "warm resin heats itself sooner in the pot: mix less at once, and go by the data sheet");
    }

    private static string Warmth(BestTemperature best, double asked)
    {
        string range = $"looked at {Degrees(best.LowestDegC)} to {Degrees(best.HighestDegC)} °C";
        if (best.BoilsThroughout) return $"may boil under this vacuum at every temperature of the card; {range}. Ask for a weaker vacuum";
        if (best.IsBoundByBoiling) range += "; warmer, it may boil under this vacuum";
        string margin = $"time to gel {Numbers.Figures(best.GelMarginRatio, 2)} times the time to fill";
        string edge = best.HighestDegC - best.TemperatureDegC >= AtTheEdgeDegC ? "" : best.IsBoundByBoiling ? ", as warm as it may be without boiling," : ", as warm as the card goes,";
        return best.Found
            ? $"quickest to fill at {Degrees(best.TemperatureDegC)} °C{edge} with the margin you ask for ({Numbers.Say(asked)}): {Amounts.Time(best.FillTimeS)}, {margin}; {range}"
            : $"keeps the margin you ask for ({Numbers.Say(asked)}) at no temperature; nearest at {Degrees(best.TemperatureDegC)} °C, {margin}; {range}";
    }

    private static string Degrees(double degC) => Numbers.Say(Math.Round(degC, 1));

    private static FillLine FlowLine(CompareResinsResponse answer)
    {
        ResinOnPlan[] again = [.. answer.Resins.Where(static resin => !resin.SharesFlow)];
        if (again.Length == 0) return new("Flow", answer.Resins.Count > 1 ? $"followed once for all {answer.Resins.Count} resins: the same picture, other minutes" : "followed once");
        string who = again.Length == answer.Resins.Count ? "each resin" : string.Join(", ", again.Select(static resin => resin.Name));
        return new("Flow", $"followed again for {who}: {again[0].FlowAgainBecause}");
    }
}

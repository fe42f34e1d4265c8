using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The one sentence of each kind of finding: what happens, when and where, how much, and what to try.</summary>
public static class FindingSentences
{
    /// <summary>The sentence of a finding.</summary>
    /// <param name="finding">The finding; its own sentence is not read.</param>
    /// <param name="forecast">The forecast it belongs to.</param>
    /// <param name="plan">The plan.</param>
    public static string Of(Finding finding, FillForecast forecast, InfusionPlan plan)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(plan);
        string line = finding.Line.Length > 0 ? finding.Line : "the line";
        return finding.Kind switch
        {
            FindingKind.GelsFirst =>
                $"The resin gels {Amounts.Time(forecast.GelTimeS)} after opening with {Amounts.Percent(forecast.FilledFraction)} of the cloth full{NeededTime(forecast)}. "
                + "Bring feeds and far corners closer together, open sooner after mixing or take a slower resin.",
            FindingKind.PotRunsDry => EmptyPotWords.RunsDry(finding, forecast, plan),
            FindingKind.StopsShort when forecast.Outcome == Outcome.GelsFirst && forecast.HasHeightReachedMm =>
                $"Even without gel the resin would never climb to {Of(finding, "", "all of the cloth")}{Where(finding, plan, ": ")}. Raise the pot, feed from higher up or lay the panel flatter.",
            FindingKind.StopsShort when forecast.Outcome == Outcome.GelsFirst =>
                $"Even without gel the resin would never reach {Of(finding, "", "all of the cloth")}{Where(finding, plan, ": ")}. "
                + "Give that place a feed of its own, or hold the resin back at the vent that drinks it.",
            FindingKind.StopsShort when finding.Line.Length > 0 =>
                $"{PotLevelWords.TooLow(finding.Line, plan)} The resin comes to rest with {Amounts.Percent(forecast.FilledFraction)} of the cloth full. Raise the pot or hold a better vacuum.",
            FindingKind.StopsShort when ClampWords.AllFeedsShut(forecast, plan) =>
                $"Every feed is shut by {ClampWords.WhenAllFeedsShut(forecast, plan)}: the resin comes to rest with {Amounts.Percent(forecast.FilledFraction)} of the cloth full{Of(finding, ", leaves ", "")}{(finding.HasAmount ? " dry" : "")}{Where(finding, plan, ": ")}. "
                + "Let a feed stay open longer, or open another.",
            FindingKind.StopsShort when forecast.HasHeightReachedMm =>
                $"The resin climbs {Amounts.Length(forecast.HeightReachedMm)} above the lowest feed and comes to rest with {Amounts.Percent(forecast.FilledFraction)} of the cloth full{Of(finding, ", leaves ", "")}{(finding.HasAmount ? " dry" : "")}{Where(finding, plan, ": ")}. "
                + "Raise the pot, feed from higher up or lay the panel flatter.",
            FindingKind.StopsShort =>
                $"The resin comes to rest{When(finding)} with {Amounts.Percent(forecast.FilledFraction)} of the cloth full{Of(finding, ", leaves ", "")}{(finding.HasAmount ? " dry" : "")}{Where(finding, plan, ": ")}. "
                + "Give that place a feed of its own, or hold the resin back at the vent that drinks it.",
            FindingKind.TrapsAir when plan.Vents.Count == 0 && LeakWords.DrivesResinOut(forecast) =>
                $"There is no vent, and {LeakWords.Pace(forecast)}: it drives the resin out again. Find the leak, and put a vent where the cloth fills last.",
            FindingKind.TrapsAir when plan.Vents.Count == 0 =>
                "There is no vent: all the air under the bag stays in the cloth. Put a vent where the cloth fills last.",
            FindingKind.TrapsAir =>
                $"A dry spot of {Of(finding, "", "unknown size")} stays{Where(finding, plan, " at ")}{Sealed(finding)}. "
                + (LeakWords.DrivesResinOut(forecast) ? $"It grows, for {LeakWords.Pace(forecast)}: find the leak first. " : "")
                + (OpenedThen(finding, forecast, plan) is string feed ? $"Open {feed} only once the front has passed it, or put a vent there." : "Put a vent there, or move a feed so that the resin gets there last."),
            FindingKind.VentReachedEarly => EarlyVentWords.Of(finding, forecast, plan, line),
            FindingKind.ThinMargin =>
                $"{Margin(forecast)}{SlowCase(forecast)}. Open sooner after mixing, take a slower resin or add a feed.",
            FindingKind.ResinOutAboveGoal =>
                $"{Of(finding, "", "More resin than allowed")} of resin leave through the vents; the goal is at most {Amounts.Volume(plan.Goals?.MostResinOutCm3 ?? 0)}. Shut a vent once it is wet, or move it to where the cloth fills last.",
            FindingKind.ToolSideBehind =>
                $"The tool side fills{Of(finding, " ", "")} after the bag side{Where(finding, plan, " at ")}. Wait that long before anything is shut{(forecast.Lag is Lag lag ? SideWords.Advice(lag) : "")}.",
            FindingKind.LineEndWeak =>
                $"The far end of {line} feeds with only {(finding.HasAmount ? Amounts.Percent(finding.Amount) : "part")} of the pressure at its beginning. Take a wider line or feed it from the middle.",
            FindingKind.MayBoil => BagWords.MayBoil(finding, forecast, plan),
            FindingKind.GoalFinerThanResolution when finding.At is not null =>
                $"A passage{Where(finding, plan, " at ")} is too narrow for squares of {Numbers.Say(plan.Resolution.CellMm)} mm; take smaller squares there: resolution.cellMm.",
            FindingKind.GoalFinerThanResolution =>
                $"The largest dry spot allowed, {Amounts.Area(plan.Goals?.LargestDrySpotMm2 ?? 0)}, is smaller than four squares; a dry spot below {FourSquares(finding, plan)} cannot be seen. Take smaller squares or a larger goal.",
            _ => throw new ArgumentOutOfRangeException(nameof(finding), finding.Kind, "No such finding."),
        };
    }

    private static string Margin(FillForecast forecast) => forecast.HasSpareTimeS
        ? $"The resin gels {Amounts.Time(forecast.SpareTimeS)} after {(forecast.Outcome == Outcome.Fills ? "the cloth is full" : "it comes to rest")} ({Numbers.Figures(forecast.GelMarginRatio, 2)} times {(GelWords.Thickens(forecast) ? "the flow the fill needs" : "the fill time")})"
        : $"The resin gels {Amounts.Time(forecast.GelTimeS)} after opening";

    private static string SlowCase(FillForecast forecast)
    {
        if (forecast.Likely is not LikelyBand band) return "";
        if (!band.HasFillTimeToS) return ", and in the slow case before that";
        return $", {Amounts.Time(Math.Max(0, forecast.GelTimeS - band.FillTimeToS))} in the slow case";
    }

    private static string NeededTime(FillForecast forecast) =>
        forecast.HasGelMarginRatio && forecast.GelMarginRatio > 0 && !GelWords.Thickens(forecast) ? $"; it would need {Amounts.Time(forecast.GelTimeS / forecast.GelMarginRatio)}" : "";

    private static string FourSquares(Finding finding, InfusionPlan plan) =>
        finding.HasAmount ? Amounts.Area(finding.Amount) : Amounts.Area(4 * plan.Resolution.CellMm * plan.Resolution.CellMm);

    private static string When(Finding finding) => finding.HasTimeS ? $" at {Amounts.Time(finding.TimeS)}" : "";

    private static string Sealed(Finding finding) => finding.HasTimeS ? $", cut off from every vent at {Amounts.Time(finding.TimeS)}" : "";

    // A feed that is opened ahead of the front shuts in what lies between.
    private static string? OpenedThen(Finding finding, FillForecast forecast, InfusionPlan plan) => !finding.HasTimeS ? null : forecast.ClampEvents
        .Where(turn => turn.OpenFraction > 0 && Math.Abs(turn.TimeS - finding.TimeS) <= 1e-6 * Math.Max(1, finding.TimeS))
        .Select(turn => turn.Line).FirstOrDefault(line => plan.Feeds.Any(feed => feed.Name == line));

    private static string Where(Finding finding, InfusionPlan plan, string before) => finding.At is Point at ? before + PlaceWords.Of(at, plan) : "";

    private static string Of(Finding finding, string before, string otherwise) => !finding.HasAmount
        ? otherwise
        : before + finding.AmountUnit switch
        {
            "mm2" => Amounts.Area(finding.Amount),
            "cm3" => Amounts.Volume(finding.Amount),
            "mbar_abs" => $"{Numbers.Say(Numbers.Rounded(finding.Amount, 2))} mbar",
            "min" => Amounts.Time(60 * finding.Amount),
            _ => Numbers.Figures(finding.Amount, 2),
        };
}

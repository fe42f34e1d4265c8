using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Units;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Words;

/// <summary>The lines about clamps and steps of the vacuum: what is done, when that is, and what never comes.</summary>
internal static class ClampWords
{
    // A turn at the very end comes with it.
    private const double Rounding = 1e-6;

    /// <summary>Rules that are told one by one [-].</summary>
    private const int MostTold = 6;

    /// <summary>One line a rule, in the order in which they come, those that never do last; none for a plan without clamps.</summary>
    public static IEnumerable<FillLine> Lines(FillForecast forecast, InfusionPlan plan)
    {
        ClampEvent[] events = [.. forecast.ClampEvents.OrderBy(static one => one.TimeS)];
        PlannedTurn[] rules = [.. PlannedTurn.Of(plan)];
        string[] done = [.. events.Select(one => Done(one, plan))];
        string[] never = [.. rules.Where(rule => !events.Any(rule.IsDoneBy)).Select(rule => $"{Never(rule)}: {MomentWords.WhyNever(rule.When, plan)}")];
        string[] told = [.. done.Concat(never)];
        for (int k = 0; k < Math.Min(MostTold, told.Length); k++) yield return new FillLine(k == 0 ? "Clamps" : "", told[k]);
        if (told.Length > MostTold) yield return new FillLine("", $"and {told.Length - MostTold} more (--json lists all)");
    }

    /// <summary>Whether every feed is shut at the end, so that nothing flows any more.</summary>
    public static bool AllFeedsShut(FillForecast forecast, InfusionPlan plan) =>
        plan.Feeds.Count > 0 && plan.Feeds.All(feed => LastTurn(feed.Name, forecast) is ClampEvent last ? last.OpenFraction == 0 : feed.Opens is not null);

    /// <summary>When the last feed is shut, where all are.</summary>
    public static string WhenAllFeedsShut(FillForecast forecast, InfusionPlan plan) =>
        Amounts.Time(plan.Feeds.Select(feed => LastTurn(feed.Name, forecast)?.TimeS ?? 0).Max());

    /// <summary>The turn that shuts a line for good; null while it is open at the end.</summary>
    public static ClampEvent? ShutBy(string line, FillForecast forecast) => LastTurn(line, forecast) is { OpenFraction: 0 } last ? last : null;

    private static ClampEvent? LastTurn(string line, FillForecast forecast) =>
        forecast.ClampEvents.LastOrDefault(one => one.Line == line && one.TimeS <= forecast.EndTimeS * (1 + Rounding));

    private static string Done(ClampEvent done, InfusionPlan plan)
    {
        string when = done.When is null || done.When.HasAtMin
            ? $"at {Amounts.Time(done.TimeS)}"
            : $"{MomentWords.When(done.When, plan)}, {Amounts.Time(done.TimeS)}";
        return done.HasPressureMbarAbs ? $"bag to {Numbers.Say(done.PressureMbarAbs)} mbar {when}" : $"{Turn(done.Line, done.OpenFraction)} {when}";
    }

    private static string Never(PlannedTurn rule) => rule switch
    {
        { PressureMbarAbs: double pressure } => $"bag never to {Numbers.Say(pressure)} mbar",
        { OpenFraction: 0 } => $"{rule.Line} never shuts",
        { OpenFraction: 1 } => $"{rule.Line} never opens",
        _ => $"{rule.Line} is never set to {Numbers.Say(rule.OpenFraction ?? 1)} open",
    };

    private static string Turn(string line, double openFraction) => openFraction switch
    {
        0 => $"{line} shuts",
        1 => $"{line} opens",
        _ => $"{line} is set to {Numbers.Say(openFraction)} open",
    };
}

using System.Globalization;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Answers;

/// <summary>Whether a forecast meets the goals of its plan: the exit code goes by this and by nothing else.</summary>
public static class GoalVerdict
{
    /// <summary>Whether every goal is met.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">Its forecast.</param>
    public static bool IsMet(InfusionPlan plan, FillForecast forecast)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        return forecast.Outcome == Outcome.Fills && !Missed(plan, forecast).Any();
    }

    /// <summary>What is asked of a fill and not met, in words; the outcome speaks for itself.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="forecast">Its forecast.</param>
    public static IEnumerable<string> Missed(InfusionPlan plan, FillForecast forecast)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(forecast);
        double leastMargin = plan.Goals is { HasSmallestGelMarginRatio: true } margin ? margin.SmallestGelMarginRatio : PlanDefaults.SmallestGelMarginRatio;
        if (forecast.HasGelMarginRatio && forecast.GelMarginRatio < leastMargin)
            yield return string.Create(CultureInfo.InvariantCulture, $"time to gel is {forecast.GelMarginRatio:0.##} times the time to fill; you ask for {leastMargin:0.##}");
        double mostOut = plan.Goals is { HasMostResinOutCm3: true } bleed ? bleed.MostResinOutCm3 : double.PositiveInfinity;
        double resinOut = forecast.Vents.Sum(vent => vent.ResinOutCm3);
        if (resinOut > mostOut)
            yield return string.Create(CultureInfo.InvariantCulture, $"{resinOut:0.#} cm³ ({forecast.Vents.Sum(vent => vent.ResinOutG):0.#} g) leave through the vents; you allow {mostOut:0.#} cm³");
    }
}

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
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(forecast);
        double leastMargin = plan.Goals is { HasSmallestGelMarginRatio: true } margin ? margin.SmallestGelMarginRatio : PlanDefaults.SmallestGelMarginRatio;
        double mostOut = plan.Goals is { HasMostResinOutCm3: true } bleed ? bleed.MostResinOutCm3 : double.PositiveInfinity;
        return forecast.Outcome == Outcome.Fills
            && forecast.GelMarginRatio >= leastMargin
            && forecast.Vents.Sum(vent => vent.ResinOutCm3) <= mostOut;
    }
}

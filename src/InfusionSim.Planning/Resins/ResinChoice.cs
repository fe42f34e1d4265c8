using InfusionSim.Physics.Forecasts;

namespace InfusionSim.Planning.Resins;

/// <summary>Which of several resins suits a panel best, by its goals and by nothing else.</summary>
public static class ResinChoice
{
    /// <summary>Whether a forecast fills and meets every goal.</summary>
    /// <param name="forecast">The forecast.</param>
    /// <param name="goals">What is asked of it.</param>
    public static bool Meets(Forecast forecast, Goals goals)
    {
        ArgumentNullException.ThrowIfNull(forecast);
        ArgumentNullException.ThrowIfNull(goals);
        return forecast.Outcome == Outcome.Fills && forecast.GelMargin >= goals.SmallestGelMargin && forecast.Vents.Sum(static vent => vent.ResinOut) <= goals.MostResinOut;
    }

    /// <summary>Place of the best: of those that meet the goals the one that is full soonest, the first of equals; null when none meets them [-].</summary>
    /// <param name="resins">The resins, in the order given.</param>
    public static int? BestOf(IReadOnlyList<ResinOnPanel> resins)
    {
        ArgumentNullException.ThrowIfNull(resins);
        (int Index, ResinOnPanel Resin)[] fit = [.. resins.Index().Where(static one => one.Item.MeetsGoals)];
        return fit.Length == 0 ? null : fit.MinBy(static one => one.Resin.Forecast.FillTime ?? double.PositiveInfinity).Index;
    }
}

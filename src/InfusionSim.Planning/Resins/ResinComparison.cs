using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Planning.Mixing;

namespace InfusionSim.Planning.Resins;

/// <summary>Compares resins on one panel: where the resin goes is followed once for all of them, when it gets there is another clock for each.</summary>
/// <remarks>
/// A clamp or the vacuum turned at a minute lets the flow know the time: then the resin that is furthest by that minute is followed first, and each
/// of the others goes along with
/// it up to the minute that finds it elsewhere. A slope or a pot at another level lets the flow know the weight: then it is followed again for each
/// density. Viscosity
/// and gel never enter the flow.
/// </remarks>
public static class ResinComparison
{
    // How far beyond the slowest end of a fill the curves of the others go on.
    private const double Beyond = 2.5;

    /// <summary>Compares resins.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="candidates">The resins, at least one.</param>
    /// <param name="bag">What drives them.</param>
    /// <param name="goals">What is asked of them.</param>
    /// <param name="permeabilityFactor">How uncertain the permeability of the cloth as a whole is, times or divided by [-], at least 1.</param>
    /// <param name="progress">Told how far the work is; may be null. Called on the computing thread.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    /// <returns>What each does, in the order given.</returns>
    public static IReadOnlyList<ResinOnPanel> Of(
        Panel panel,
        IReadOnlyList<ResinCandidate> candidates,
        Bag bag,
        Goals goals,
        double permeabilityFactor,
        IProgress<ForecastProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(goals);
        ArgumentOutOfRangeException.ThrowIfZero(candidates.Count);
        Resin[] resins = [.. candidates.Select(static candidate => candidate.Resin)];
        FlowKnowledge knowledge = FlowKnowledge.Of(panel, bag);
        Forecast[] forecasts = new Forecast[resins.Length];
        IReadOnlyList<IReadOnlyList<int>> groups = FlowGroups.Of(resins, bag, knowledge);
        FlowSharing[] sharing = new FlowSharing[resins.Length];
        FollowedFlow? first = null;
        int done = 0;
        foreach (IReadOnlyList<int> group in groups)
        {
            int before = done++;
            OneFlowProgress? part = progress is null ? null : new(progress, before, groups.Count);
            bool goesAlong = first is not null && knowledge is { Minutes: true, Weight: false };
            FollowedFlow flow = goesAlong ? Forecaster.FollowAgain(first!, resins[group[0]], bag, part, cancellation) : Forecaster.Follow(panel, resins[group[0]], bag, part, cancellation);
            foreach (int index in group)
            {
                forecasts[index] = Forecaster.Judge(flow, resins[index], bag, goals, permeabilityFactor, cancellation);
                sharing[index] = goesAlong && double.IsPositiveInfinity(flow.Map.TakenUntil) ? FlowSharing.Shared : FlowGroups.SharingOf(group, groups, knowledge);
            }

            first ??= flow;
        }

        double latest = Beyond * forecasts.Max(static forecast => forecast.EndTime);
        ResinOnPanel[] answers = new ResinOnPanel[resins.Length];
        foreach (IReadOnlyList<int> group in groups)
            foreach (int index in group)
            {
                Forecast forecast = forecasts[index];
                answers[index] = new ResinOnPanel(
                    resins[index],
                    forecast,
                    ResinChoice.Meets(forecast, goals),
                    forecast.Clock.ViscosityAt(0),
                    forecast.Clock.ViscosityAt(forecast.EndTime) is var thickness && double.IsFinite(thickness) ? thickness : null,
                    MixTotal.Of(panel, forecast, resins[index].Density, candidates[index].Mixing),
                    sharing[index],
                    ResinCurve.Of(forecast, latest),
                    BestTemperatureOf(candidates[index], forecast, bag, goals, cancellation))
                {
                    TakenUntil = forecast.Clock.TimeAt(forecast.Map.TakenUntil),
                };
            }

        progress?.Report(new(1, "done"));
        return answers;
    }

    // No resin that cannot fill at any temperature has a best one.
    private static BestTemperature? BestTemperatureOf(ResinCandidate candidate, Forecast forecast, Bag bag, Goals goals, CancellationToken cancellation)
    {
        if (candidate.Temperatures is not TemperatureRange range || forecast.GelMargin is not (double margin and > 0)) return null;
        double fullClock = forecast.Clock.GelClock / margin;
        if (BoilingLimit.Of(candidate.Resin, forecast.Bag.Deepest, range) is not double limit)
        {
            WarmFill coldest = FillAt(range.Lowest);
            double? time = double.IsFinite(coldest.FillTime) ? coldest.FillTime : null;
            return new(false, range.Lowest, time, coldest.GelMargin, range.Lowest, range.Highest) { IsBoundByBoiling = true, BoilsThroughout = true };
        }

        return BestTemperatureSearch.In(range with { Highest = limit }, goals.SmallestGelMargin, FillAt, cancellation) with { IsBoundByBoiling = limit < range.Highest };

        WarmFill FillAt(double temperature) => WarmFill.At(candidate.Resin, bag, fullClock, temperature);
    }
}

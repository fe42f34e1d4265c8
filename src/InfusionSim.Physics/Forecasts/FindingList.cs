using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Everything worth knowing about a fill, worst first.</summary>
internal static class FindingList
{
    /// <summary>Share of the cloth below which a wet vent is early [-] (common practice: a vent is clamped when resin shows, so little may be left by then).</summary>
    public const double EarlyBelow = 0.95;

    private const double Rounding = 1e-9;

    /// <summary>Collects the findings.</summary>
    /// <param name="map">Where the resin goes.</param>
    /// <param name="spots">What stays dry.</param>
    /// <param name="vents">What happens at each vent.</param>
    /// <param name="end">How it ends.</param>
    /// <param name="clock">When.</param>
    /// <param name="goals">What is asked of it.</param>
    /// <param name="likely">What two shots in three do.</param>
    /// <param name="state">The panel at the end.</param>
    /// <param name="lag">How far the tool side stays behind; null for a panel of one layer.</param>
    /// <param name="feedLines">Pressure along the feed lines.</param>
    /// <param name="vacuum">What becomes of the vacuum.</param>
    public static IReadOnlyList<Finding> Of(
        FillMap map,
        IReadOnlyList<DrySpot> spots,
        IReadOnlyList<VentForecast> vents,
        FillEnd end,
        DriveClock clock,
        Goals goals,
        LikelyBand likely,
        FillState state,
        LagForecast? lag,
        IReadOnlyList<LineForecast?> feedLines,
        BagForecast vacuum)
    {
        List<Finding> findings = [];
        Point2? last = end.LastCell >= 0 ? map.Problem.Cells.CentroidOf(map.Problem.CellOf(end.LastCell)) : null;
        if (end.GelsFirst)
            findings.Add(new(FindingKind.GelsFirst, last, Time: clock.GelTime, Amount: 1 - state.FilledFraction));
        if (end.EmptyPot is EmptyPot pot)
            findings.Add(new(FindingKind.PotRunsDry, last, map.Problem.Feeds[pot.Feed].Name, clock.TimeAt(pot.Clock), pot.Missing));
        if (end.StopsShort)
            findings.Add(new(FindingKind.StopsShort, MiddleOf(map, end.UnreachedCells), FeedTooHigh(map.ProblemAtEnd), Amount: end.UnreachedArea));
        foreach (DrySpot spot in spots)
        {
            if (spot.Area > goals.LargestDrySpot)
                findings.Add(new(FindingKind.TrapsAir, spot.At, Time: clock.TimeAt(spot.SealedClock), Amount: spot.Area));
        }

        for (int vent = 0; vent < vents.Count; vent++)
        {
            if (map.Problem.VentPassesResin[vent] && vents[vent].FilledFractionAtArrival < EarlyBelow)
                findings.Add(new(FindingKind.VentReachedEarly, null, map.Problem.Vents[vent].Name, vents[vent].ArrivalTime, vents[vent].ResinOut));
        }

        bool thin = likely.GelMarginFrom < 1 || clock.GelClock / end.FillClock < goals.SmallestGelMargin;
        if (!end.GelsFirst && !end.StopsShort && !end.IsDrivenOut && thin)
            findings.Add(new(FindingKind.ThinMargin, Amount: clock.GelClock / end.FillClock));
        double resinOut = vents.Sum(static vent => vent.ResinOut);
        if (resinOut > goals.MostResinOut)
            findings.Add(new(FindingKind.ResinOutAboveGoal, Amount: resinOut));
        if (lag is { At: Point2 behind } && lag.IsBehind(clock.TimeAt(end.Clock)))
            findings.Add(new(FindingKind.ToolSideBehind, behind, Amount: lag.LargestLag));
        for (int feed = 0; feed < feedLines.Count; feed++)
        {
            if (feedLines[feed] is { EndRatio: < LineForecast.WeakBelow } line)
                findings.Add(new(FindingKind.LineEndWeak, line.EndAt, map.Problem.Feeds[feed].Name, Amount: line.EndRatio));
        }

        if (vacuum.MayBoil)
            findings.Add(new(FindingKind.MayBoil, Amount: vacuum.BoilsBelow));
        double cellSize = map.Problem.Cells.Grid.CellSize, finest = PocketFinder.SmallestIn(map.Problem) * cellSize * cellSize;
        if (goals.LargestDrySpot < finest * (1 - Rounding))
            findings.Add(new(FindingKind.GoalFinerThanResolution, Amount: finest));
        foreach (Point2 lost in map.Problem.Cells.LostPassages)
            findings.Add(new(FindingKind.GoalFinerThanResolution, lost, Amount: finest));
        return findings;
    }

    // On a slope the height reached tells more.
    private static string? FeedTooHigh(FillProblem problem) => problem.Heads is not null ? null
        : Enumerable.Range(0, problem.Feeds.Count).Where(feed => problem.FeedPressures[feed] <= 0).Select(feed => problem.Feeds[feed].Name).FirstOrDefault();

    private static Point2? MiddleOf(FillMap map, IReadOnlyList<int> cells)
    {
        double area = 0, x = 0, y = 0;
        foreach (int cell in cells)
        {
            double here = map.Problem.Cells.Area[cell];
            area += here;
            x += here * map.Problem.Cells.CentroidX[cell];
            y += here * map.Problem.Cells.CentroidY[cell];
        }

        return area > 0 ? new Point2(x / area, y / area) : null;
    }
}

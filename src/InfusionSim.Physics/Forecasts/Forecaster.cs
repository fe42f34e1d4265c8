using InfusionSim.Physics.Air;
using InfusionSim.Physics.Bleeding;
using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Predicts a fill: the one way from a panel, a resin and a bag to a forecast.</summary>
public static class Forecaster
{
    // A vent that is reached with the very end is reached.
    private const double Rounding = 1e-9;

    /// <summary>Predicts a fill.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="resin">What flows.</param>
    /// <param name="bag">What drives it.</param>
    /// <param name="goals">What is asked of it.</param>
    /// <param name="permeabilityFactor">How uncertain the permeability of the cloth as a whole is, times or divided by [-], at least 1.</param>
    /// <param name="progress">Told how far the work is; may be null. Called on the computing thread.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    /// <exception cref="FlowNotSolvedException">When the solver does not reach its tolerance.</exception>
    public static Forecast Predict(
        Panel panel,
        Resin resin,
        Bag bag,
        Goals goals,
        double permeabilityFactor,
        IProgress<ForecastProgress>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        ArgumentNullException.ThrowIfNull(goals);
        ArgumentOutOfRangeException.ThrowIfLessThan(permeabilityFactor, 1);
        FollowedFlow flow = Follow(panel, resin, bag, progress, cancellation);
        Forecast forecast = Judge(flow, resin, bag, goals, permeabilityFactor, cancellation);
        progress?.Report(new(1, "done"));
        return forecast;
    }

    /// <summary>Follows the resin through a panel; the costly half of a forecast, shared by every resin where <see cref="FlowKnowledge"/> is none.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="resin">What flows; only its weight and its clock at clamped minutes count, and only where the flow knows of them.</param>
    /// <param name="bag">What drives it.</param>
    /// <param name="progress">Told how far the work is; may be null. Called on the computing thread.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    /// <exception cref="FlowNotSolvedException">When the solver does not reach its tolerance.</exception>
    public static FollowedFlow Follow(
        Panel panel, Resin resin, Bag bag, IProgress<ForecastProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(panel);
        progress?.Report(new(0, "cutting the cloth into squares"));
        GravityHead gravity = GravityHead.Of(resin, bag);
        FillProblem problem = TiltedPanel.Of(FillProblemBuilder.Build(panel, cancellation: cancellation), gravity);
        progress?.Report(new(0.05, "following the front"));
        FillConditions conditions = FillConditions.Of(panel, resin, bag);
        FillMap map = FillMap.Compute(problem, conditions, progress: share => progress?.Report(Following(share)), cancellation: cancellation);
        progress?.Report(new(0.9, "looking for trapped air"));
        IReadOnlyList<DrySpot> spots = DrySpotFinder.Find(map, bag, cancellation);
        progress?.Report(new(0.95, "checking against coarser squares"));
        FillMap? coarse = GridError.OnLargerSquares(panel, map, gravity, conditions, cancellation);
        return new FollowedFlow(map, spots, GridError.Of(panel, map, gravity, coarse, cancellation))
        {
            OnLargerSquares = coarse,
            DryCloth = bag.Leak is null ? null : DryRegionPressure.OfDryPanel(problem, cancellation),
        };
    }

    /// <summary>Follows another resin through the same panel where something happens at a minute: it goes along with a flow that was followed before up to the first minute that finds it
    /// elsewhere.</summary>
    /// <param name="before">The flow that was followed before, on a panel whose flow does not know the weight of the resin.</param>
    /// <param name="resin">What flows.</param>
    /// <param name="bag">What drives it, the same as before.</param>
    /// <param name="progress">Told how far the work is; may be null. Called on the computing thread.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    /// <exception cref="FlowNotSolvedException">When the solver does not reach its tolerance.</exception>
    public static FollowedFlow FollowAgain(
        FollowedFlow before, Resin resin, Bag bag, IProgress<ForecastProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(before);
        Panel panel = before.Map.Problem.Panel ?? throw new ArgumentException("A flow without a panel has no clamps.", nameof(before));
        FillConditions conditions = FillConditions.Of(panel, resin, bag);
        FillMap map = before.Map.Again(conditions, progress: share => progress?.Report(Following(share)), cancellation: cancellation);
        if (double.IsPositiveInfinity(map.TakenUntil)) return before with { Map = map };
        progress?.Report(new(0.9, "looking for trapped air"));
        IReadOnlyList<DrySpot> spots = DrySpotFinder.Find(map, bag, cancellation);
        progress?.Report(new(0.95, "checking against coarser squares"));
        GravityHead gravity = GravityHead.Of(resin, bag);
        FillMap? coarse = before.OnLargerSquares?.Again(conditions, GridError.CoarseMoments, cancellation: cancellation)
            ?? GridError.OnLargerSquares(panel, map, gravity, conditions, cancellation);
        return before with { Map = map, DrySpots = spots, NumericalError = GridError.Of(panel, map, gravity, coarse, cancellation), OnLargerSquares = coarse };
    }

    private static ForecastProgress Following(double share) => new(0.05 + 0.85 * share, "following the front");

    /// <summary>Says when, how it ends and what comes of it, for one resin on a flow that has been followed.</summary>
    /// <param name="flow">Where the resin goes.</param>
    /// <param name="resin">What flows.</param>
    /// <param name="bag">What drives it, the one the flow was followed under.</param>
    /// <param name="goals">What is asked of it.</param>
    /// <param name="permeabilityFactor">How uncertain the permeability of the cloth as a whole is, times or divided by [-], at least 1.</param>
    /// <param name="cancellation">Stops the work within 250 ms.</param>
    public static Forecast Judge(
        FollowedFlow flow, Resin resin, Bag bag, Goals goals, double permeabilityFactor, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(flow);
        ArgumentNullException.ThrowIfNull(goals);
        ArgumentOutOfRangeException.ThrowIfLessThan(permeabilityFactor, 1);
        BagForecast vacuum = BagForecast.Of(bag, resin, flow.DryCloth, flow.Map.Problem.PoreVolume.Take(flow.Map.Problem.Operator.CellCount).Sum());
        DriveClock clock = new(resin, bag, flow.Map.ClockOf);
        Forecast judged = Judge(flow, clock, ClockIf, resin.Density, vacuum, goals, permeabilityFactor, cancellation);
        if (flow.Map.Problem.Panel is Panel panel) judged = judged with { ClampEvents = ClampEvents.Of(panel, bag, flow.Map.ClockOf, judged) };
        return FollowUp.Of(judged, resin, cancellation);

        // In tighter cloth every place is reached later on the drive clock, and the vacuum is changed later with it.
        DriveClock ClockIf(double factor) => bag.Steps.Count == 0 ? clock : new(resin, bag, moment => factor * flow.Map.ClockOf(moment));
    }

    private static Forecast Judge(
        FollowedFlow flow, DriveClock clock, Func<double, DriveClock> clockIf, double density, BagForecast vacuum, Goals goals, double permeabilityFactor,
        CancellationToken cancellation)
    {
        (FillMap map, IReadOnlyList<DrySpot> spots, double numericalError) = flow;
        FillEnd end = FillEnd.Of(map, spots, clock, goals, density, cancellation);
        FillState state = map.StateAt(end.Clock, cancellation: cancellation);
        IReadOnlyList<DrySpot> sealedSpots = [.. spots.Where(spot => spot.SealedClock < end.Clock || !end.GelsFirst)];
        double[] flows = end.GelsFirst ? new double[map.Problem.Vents.Count] : VentFlow.Of(map, cancellation);
        IReadOnlyList<VentForecast> vents = [.. flows.Select((flow, vent) => AtVent(map, vent, end, clock, state.ResinOut[vent], flow, cancellation))];
        double? margin = end.Outcome == Outcome.StopsShort || end.IsDrivenOut ? null : clock.GelClock / end.FillClock;
        bool fills = !end.StopsShort && !end.GelsFirst && !end.IsDrivenOut && end.EmptyPot is null;
        LikelyBand likely = new(
            permeabilityFactor,
            FillTimeAt(end, clockIf(1 / permeabilityFactor), 1 / permeabilityFactor),
            FillTimeAt(end, clockIf(permeabilityFactor), permeabilityFactor),
            margin / permeabilityFactor,
            margin * permeabilityFactor);
        (IReadOnlyList<LineForecast?> feedLines, IReadOnlyList<LineForecast?> ventLines) = LinePressures.Of(map, end.Clock, cancellation);
        LagForecast? lag = LagFinder.Of(map, end, clock);
        return new Forecast
        {
            Outcome = end.Outcome,
            Findings = FindingList.Of(map, sealedSpots, vents, end, clock, goals, likely, state, lag, feedLines, vacuum),
            Bag = vacuum,
            FillTime = fills ? clock.TimeAt(end.FillClock) : null,
            GelTime = clock.GelTime,
            GelMargin = margin,
            EndTime = clock.TimeAt(end.Clock),
            EndClock = end.Clock,
            Likely = likely,
            FilledFraction = state.FilledFraction,
            LastToFill = end.LastCell >= 0 ? map.Problem.Cells.CentroidOf(map.Problem.CellOf(end.LastCell)) : null,
            HeightReached = HeightReached.Of(map.ProblemAtEnd, state),
            DrySpots = sealedSpots,
            ToolSideMarkArrivals = [.. (map.Problem.Panel?.TimingMarks ?? []).Select(mark => TimeOf(map.ToolSideArrivalAt(mark.At), end, clock))],
            TimingMarkArrivals = [.. (map.Problem.Panel?.TimingMarks ?? []).Select(mark => TimeOf(map.ArrivalAt(mark.At), end, clock))],
            ResinIn = state.ResinIn,
            FeedLineVolumes = state.FeedLineVolume,
            FeedLines = feedLines,
            VentLines = ventLines,
            ResinInLines = state.FeedLineVolume.Sum() + state.VentLineVolume.Sum(),
            Vents = vents,
            ResinInPreform = state.FilledFraction * map.Problem.PartVolume + state.GapVolume,
            MassBalanceError = state.MassBalanceError,
            NumericalError = numericalError,
            Map = map,
            Clock = clock,
            Lag = lag,
            ResinInMesh = state.MeshVolume,
            ArrivalTimes = TimesOf(map.BagSideArrival, end, clock),
            ToolSideArrivalTimes = TimesOf(map.ToolSideArrival, end, clock),
        };
    }

    private static double? FillTimeAt(FillEnd end, DriveClock clock, double factor) =>
        end.StopsShort || end.IsDrivenOut || end.FillClock * factor > clock.GelClock ? null : clock.TimeAt(end.FillClock * factor);

    private static double? TimeOf(double arrival, FillEnd end, DriveClock clock) =>
        arrival <= end.Clock * (1 + Rounding) ? clock.TimeAt(Math.Min(arrival, end.Clock)) : null;

    private static double[] TimesOf(double[] arrivals, FillEnd end, DriveClock clock) =>
        [.. arrivals.Select(arrival => double.IsNaN(arrival) ? double.NaN : TimeOf(arrival, end, clock) ?? double.PositiveInfinity)];

    private static VentForecast AtVent(FillMap map, int vent, FillEnd end, DriveClock clock, double resinOut, double flow, CancellationToken cancellation)
    {
        (double wet, double filledThen) = map.VentReached(vent, cancellation);
        double? arrival = TimeOf(wet, end, clock), filled = arrival is null ? null : filledThen;
        return new VentForecast(arrival, filled, resinOut, flow * clock.RateAt(clock.TimeAt(end.Clock)));
    }
}

namespace InfusionSim.Physics.Flow;

/// <summary>When the front passes the middle of each cell, from the states on both sides of that moment.</summary>
/// <remarks>
/// A cell takes in resin at a rate that stays the same until a cell beside it is full and then rises, so its share bends
/// upwards: tangents at a state before and at one after bound the half full moment from above, the chord bounds it from
/// below. Once it is full its accumulated pressure w and pressure p bound the moment it filled between 2w/p and w/p ago:
/// p rises from 0 no slower than not at all and, near the front, no faster than evenly. Where the bounds lie too far apart
/// one more state halves the interval, down to a share of the fill that bounds the error by itself. Derived; checked against bisected
/// clocks in the verification.
/// </remarks>
internal sealed class FrontTracker
{
    // Half the distance of the bounds of a passage that is let stand, over the end of the fill: the passage itself is then off by a tenth of it as a rule, by
    // little more than it at worst (seen against states four times as dense).
    private const double Unresolved = 4e-4;

    // Nodes on neither side of a layered panel are in no picture; where the air goes asks less of them.
    private const double UnresolvedInside = 4 * Unresolved;

    // An interval as short as this is not halved, over the end of the fill: whatever the bounds, no passage in it is off by more than its length.
    private const double SmallestInterval = 1.4e-3;

    // Where in its bracket a passage is taken to lie, 0 at the latest: near the tangent where only one side was seen, because a lone
    // front fills a cell at one rate; nearer the middle where the rates of both sides differ.
    private const double TangentWeight = 0.1;
    private const double KinkWeight = 0.4;

    private readonly FillProblem _problem;
    private readonly FillMarcher _marcher;
    private readonly double _end;
    private readonly NodeInflow _inflow;
    private readonly double[] _arrival;
    private readonly double[] _full;
    private readonly bool[] _isInside;
    private readonly FrontTrack _track;

    private FrontTracker(FillProblem problem, FillMarcher marcher, FrontTrack track, double end)
    {
        _problem = problem;
        _marcher = marcher;
        _end = end;
        _inflow = new NodeInflow(problem);
        _track = track;
        _arrival = track.Arrival;
        _full = track.Full;
        _isInside = new bool[_arrival.Length];
        if (problem.Operator.Layers == 1) return;
        Array.Fill(_isInside, true, 0, problem.Operator.CellCount);
        foreach (int node in problem.BagSide.Concat(problem.ToolSide))
            if (node >= 0) _isInside[node] = false;
    }

    /// <summary>Follows the front from the opening of the feeds to the end of the fill.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="marcher">Computes the states.</param>
    /// <param name="end">Drive clock at which the last place is full [-], above 0.</param>
    /// <param name="moments">How many clock values to begin with, at least 2.</param>
    /// <param name="progress">Told the share of the clock that is done; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>When the front passes.</returns>
    public static FrontTrack Follow(
        FillProblem problem, FillMarcher marcher, double end, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        FrontTrack track = new(problem);
        Follow(problem, marcher, track, 0, end, moments, progress, cancellation);
        return track;
    }

    /// <summary>Follows the front through a stretch of a fill.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="marcher">Computes the states.</param>
    /// <param name="track">When the front passes; nodes that it has passed before keep their clocks.</param>
    /// <param name="from">Drive clock at which the stretch begins [-].</param>
    /// <param name="end">Drive clock at which it ends [-].</param>
    /// <param name="moments">How many clock values to begin with, at least 1.</param>
    /// <param name="progress">Told the share of the stretch that is done; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static void Follow(
        FillProblem problem, FillMarcher marcher, FrontTrack track, double from, double end, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        FrontTracker tracker = new(problem, marcher, track, end);
        FrontSample before = from > 0 ? tracker.Sample(from, cancellation, isTold: false) : tracker.Dry();
        tracker.TakeOver(before);
        for (int moment = 1; moment <= moments; moment++)
        {
            // The front slows down as the square root of time: even steps of the front.
            double share = (double)moment / moments;
            FrontSample after = tracker.Sample(moment == moments ? end : from + (end - from) * share * share, cancellation);
            tracker.Resolve(before, after, cancellation);
            before = after;
            progress?.Invoke(share);
        }
    }

    /// <summary>Follows the front through a short step whose end is known.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="marcher">Computes the states.</param>
    /// <param name="track">When the front passes; nodes that it has passed before keep their clocks.</param>
    /// <param name="from">The panel as the step begins, as the step before has left it; null to compute it.</param>
    /// <param name="clock">Drive clock at which it begins [-].</param>
    /// <param name="end">The state at its end, with the pressure.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The panel as the step ends.</returns>
    public static FrontSample FollowStep(
        FillProblem problem, FillMarcher marcher, FrontTrack track, FrontSample? from, double clock, FillState end, CancellationToken cancellation)
    {
        FrontTracker tracker = new(problem, marcher, track, end.Clock);
        FrontSample after = tracker.SampleOf(end);
        FrontSample before = from ?? (clock > 0 ? tracker.Sample(clock, cancellation, isTold: false) : tracker.Dry());
        tracker.TakeOver(before);
        tracker.Resolve(before, after, cancellation);
        return after;
    }

    // Where a stretch was cut within the error of a passage, the passage lies at the cut.
    private void TakeOver(FrontSample start)
    {
        for (int node = 0; node < _arrival.Length; node++)
        {
            if (start.Share[node] >= 0.5) _arrival[node] = Math.Min(_arrival[node], start.Clock);
            if (start.Share[node] >= 1) _full[node] = Math.Min(_full[node], start.Clock);
        }
    }

    private void Resolve(FrontSample before, FrontSample after, CancellationToken cancellation)
    {
        bool smallest = after.Clock - before.Clock <= SmallestInterval * _end;
        bool halve = false;
        for (int cell = 0; cell < _arrival.Length; cell++)
        {
            if (before.Share[cell] < 1 && after.Share[cell] >= 1) _full[cell] = Full(before, after, cell);
            if (!(before.Share[cell] < 0.5 && after.Share[cell] >= 0.5)) continue;
            _arrival[cell] = Passage(before, after, cell, out double disagreement);
            halve |= disagreement > (_isInside[cell] ? UnresolvedInside : Unresolved) * _end;
        }

        if (!halve || smallest) return;
        FrontSample middle = SampleBetween(before, after, cancellation);
        Resolve(before, middle, cancellation);
        Resolve(middle, after, cancellation);
    }

    // The middle of its bounds: from above the tangent before and the least time since, from below the longest time since.
    private static double Full(FrontSample before, FrontSample after, int cell)
    {
        double fullFor = after.FullFor(cell), rate = before.RateOf(cell);
        double earliest = Math.Max(before.Clock, after.Clock - 2 * fullFor), latest = after.Clock - fullFor;
        if (rate > 0) latest = Math.Min(latest, before.Clock + (1 - before.Share[cell]) / rate);
        return (Math.Min(earliest, latest) + latest) / 2;
    }

    private static double Passage(FrontSample before, FrontSample after, int cell, out double disagreement)
    {
        double from = before.Clock, to = after.Clock;
        double first = before.Share[cell], firstRate = before.RateOf(cell);
        double second = after.Share[cell], secondRate = after.RateOf(cell);
        bool seenBefore = first > 0 && firstRate > 0, seenAfter = second < 1 && secondRate > 0;

        // The share bends upwards: it lies above its tangents and below the chord between any two of its points.
        double earliest, latest = to;
        if (seenBefore) latest = Math.Min(latest, from + (0.5 - first) / firstRate);
        if (seenAfter)
        {
            latest = Math.Min(latest, to - (second - 0.5) / secondRate);
            earliest = from + (to - from) * (0.5 - first) / (second - first);
        }
        else
        {
            double fullFor = after.FullFor(cell);
            latest = Math.Min(latest, to - fullFor);
            double full = Math.Max(from, to - 2 * fullFor);
            earliest = from + (full - from) * (0.5 - first) / (1 - first);
        }

        if (latest < earliest) (earliest, latest) = (latest, earliest);
        disagreement = (latest - earliest) / 2;
        double weight = seenBefore == seenAfter ? (seenBefore ? KinkWeight : 0.5) : TangentWeight;
        return latest + weight * (earliest - latest);
    }

    private FrontSample Dry()
    {
        double[] nothing = new double[_arrival.Length];
        FillState dry = new()
        {
            Clock = 0,
            Saturation = nothing,
            AccumulatedPressure = nothing,
            Pressure = nothing,
            FilledFraction = 0,
            ResinIn = [],
            ResinOut = [],
            MassBalanceError = 0,
        };
        return new(dry, null, _inflow);
    }

    private FrontSample SampleBetween(FrontSample before, FrontSample after, CancellationToken cancellation)
    {
        double clock = (before.Clock + after.Clock) / 2;
        if (_marcher.IsDrivenByFeeds)
        {
            (double[] accumulated, double[] pressure) = StateGuess.Between(before.State, after.State, _full, clock);
            _marcher.Guess(accumulated, pressure);
        }

        return Sample(clock, cancellation);
    }

    private FrontSample Sample(double clock, CancellationToken cancellation, bool isTold = true)
    {
        // Of the state at the end it is asked which nodes are full, the last just so.
        double tolerance = _marcher.IsDrivenByFeeds && clock < _end ? FillMarcher.PassingTolerance : FillMarcher.TrackingTolerance;
        FillState state = _marcher.StateAt(clock, withPressure: true, tolerance, cancellation);
        return SampleOf(state, isTold);
    }

    private FrontSample SampleOf(FillState state, bool isTold = true)
    {
        if (isTold) _track.Add(new FillTally(state.Clock, state.FilledFraction, state.ResinIn.Sum(), state.ResinOut.Sum(), state.MassBalanceError));
        ReadOnlySpan<double> gravity = _marcher.GravityRate;
        return new FrontSample(state, gravity.IsEmpty ? null : gravity.ToArray(), _inflow);
    }
}

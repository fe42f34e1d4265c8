using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Clamps;

/// <summary>Follows a fill from one turn of a clamp to the next.</summary>
/// <remarks>
/// Between two turns one complementarity problem gives every state; when a clamp is turned the pressures change at once, the resin stays where it is, and the next
/// problem begins from what each node holds. A fill in which nobody touches a clamp is one stretch. A rule that waits for a timing mark or a vent knows no
/// minute, so that the stretches are the same for every resin.
/// </remarks>
internal sealed class ClampedFill
{
    private readonly FillProblem _problem;
    private readonly ClampRules? _rules;
    private readonly int _moments;
    private readonly Action<double>? _progress;
    private readonly CancellationToken _cancellation;
    private readonly FrontTrack _track;
    private readonly List<FillStretch> _stretches = [];
    private readonly List<ClampTurn> _turns = [];
    private readonly List<BagTurn> _bagTurns = [];
    private readonly List<ClampRule> _pending;
    private LineClamps _clamps;
    private FillTotal? _total;

    private ClampedFill(FillProblem problem, ClampRules? rules, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        _problem = problem;
        _rules = rules;
        _moments = moments;
        _progress = progress;
        _cancellation = cancellation;
        _track = new FrontTrack(problem);
        _pending = [.. rules?.Rules ?? []];
        _clamps = rules?.Start ?? new LineClamps([.. problem.Feeds.Select(static _ => 1.0)], [.. problem.Vents.Select(static _ => 1.0)]);
    }

    /// <summary>Follows the fill to its end.</summary>
    /// <param name="problem">The panel as numbers, with all clamps open and without heads.</param>
    /// <param name="rules">What is done with the clamps; null for nothing.</param>
    /// <param name="moments">How many moments each stretch is first looked at [-].</param>
    /// <param name="progress">Told the share of the work that is done; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FillMap Follow(FillProblem problem, ClampRules? rules, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        ClampedFill fill = new(problem, rules, moments, progress, cancellation);
        FillStart? start = FillStart.Dry(problem);
        while (start is not null) start = fill.FollowStretch(start);
        return fill.Map(withDue: true);
    }

    /// <summary>Follows one stretch; returns how the next one begins, or null at the end of the fill.</summary>
    private FillStart? FollowStretch(FillStart start)
    {
        FillProblem clamped = ClampedProblem.Of(_problem, _clamps);
        bool[] reached = Reach.From(clamped);
        FillTotal total = FillTotal.Of(clamped, reached, start, FillMarcher.ForecastTolerance, _cancellation);
        (double due, _) = NextDue(start.Clock);
        bool fills = total.LastCell >= 0, isCut = due < total.Clock || !fills;
        double end = isCut ? due : total.Clock;
        if (double.IsPositiveInfinity(end)) return Finish(clamped, reached, start, total);
        FillStretch stretch = new(clamped, reached, start, end);
        if (fills) FrontTracker.Follow(clamped, stretch.Marcher, _track, start.Clock, end, _moments, Tell, _cancellation);
        _stretches.Add(stretch);
        _total = Merge(total);

        (double clock, IReadOnlyList<ClampRule> rules) = First(start.Clock, end, isFull: !isCut);
        if (rules.Count == 0) return null;
        if (clock < end)
        {
            _track.CutAt(clock);
            _stretches[^1] = stretch = stretch with { End = clock };
        }

        foreach (ClampRule rule in rules) Make(rule, clock);
        return FillStart.From(stretch.Marcher.StateAt(clock, withPressure: false, cancellation: _cancellation));
    }

    // Nothing more flows and nothing is due: the stretch has no length.
    private FillStart? Finish(FillProblem clamped, bool[] reached, FillStart start, FillTotal total)
    {
        _stretches.Add(new FillStretch(clamped, reached, start, start.Clock));
        _total = Merge(total);
        return null;
    }

    private (double Clock, ClampRule? Rule) NextDue(double from)
    {
        (double clock, ClampRule? next) = (double.PositiveInfinity, null);
        foreach (ClampRule rule in _pending)
        {
            if (rule.When is not AtTime at) continue;
            double then = Math.Max(from, _rules!.ClockAt(at.Time, _bagTurns));
            if (then < clock) (clock, next) = (then, rule);
        }

        return (clock, next);
    }

    /// <summary>The rules that come first within a stretch that has been followed.</summary>
    private (double Clock, IReadOnlyList<ClampRule> Rules) First(double from, double end, bool isFull)
    {
        if (_pending.Count == 0) return (end, []);
        FillMap map = Map(withDue: false);
        double first = end;
        List<ClampRule> rules = [];
        foreach (ClampRule rule in _pending)
        {
            double clock = Math.Max(from, ClockOf(rule.When, map, end, isFull));
            if (clock > first) continue;
            if (clock < first) rules.Clear();
            first = clock;
            rules.Add(rule);
        }

        return (first, rules);
    }

    private double ClockOf(Moment when, FillMap map, double end, bool isFull) => when switch
    {
        AtTime at => _rules!.ClockAt(at.Time, _bagTurns),
        WhenReached reached => ClockOf(reached.Name, map),
        WhenFull => isFull ? end : double.PositiveInfinity,
        _ => double.PositiveInfinity,
    };

    private double ClockOf(string name, FillMap map)
    {
        TimingMark? mark = _problem.Panel?.TimingMarks.FirstOrDefault(mark => mark.Name == name);
        if (mark is not null) return map.ArrivalAt(mark.At) is double clock && double.IsNaN(clock) ? double.PositiveInfinity : map.ArrivalAt(mark.At);
        for (int vent = 0; vent < _problem.Vents.Count; vent++)
            if (_problem.Vents[vent].Name == name) return VentWetting.ClockOf(map, vent, _cancellation);
        return double.PositiveInfinity;
    }

    private void Make(ClampRule rule, double clock)
    {
        _pending.Remove(rule);
        if (rule.IsOfBag)
        {
            _bagTurns.Add(new(clock, rule.Value));
            return;
        }

        ClampTurn turn = new(clock, rule.IsVent, rule.Line, rule.Value);
        _turns.Add(turn);
        _clamps = _clamps.After(turn);
    }

    // What an earlier stretch has filled stays full.
    private FillTotal Merge(FillTotal total)
    {
        bool[] fills = [.. total.Fills.Select((isIn, node) => isIn || double.IsFinite(_track.Arrival[node]))];
        bool isLater = total.LastCell >= 0 || _total is null;
        return new FillTotal(isLater ? total.Clock : _total!.Clock, isLater ? total.LastCell : _total!.LastCell, total.SteadyPressure, fills);
    }

    private FillMap Map(bool withDue)
    {
        IEnumerable<ClampTurn> due = withDue
            ? _pending.Where(static rule => rule is { IsOfBag: false, When: AtTime })
                .Select(rule => new ClampTurn(_rules!.ClockAt(((AtTime)rule.When).Time, _bagTurns), rule.IsVent, rule.Line, rule.Value))
            : [];
        IEnumerable<BagTurn> dueBag = withDue
            ? _pending.Where(static rule => rule is { IsOfBag: true, When: AtTime }).Select(rule => new BagTurn(_rules!.ClockAt(((AtTime)rule.When).Time, _bagTurns), rule.Value))
            : [];
        return new FillMap(_problem, [.. _stretches], _track, _total!)
        {
            Turns = [.. _turns, .. due.OrderBy(static turn => turn.Clock)],
            BagTurns = [.. _bagTurns, .. dueBag.OrderBy(static turn => turn.Clock)],
        };
    }

    private void Tell(double share) => _progress?.Invoke((_stretches.Count + share) / (_stretches.Count + 1 + _pending.Count));
}

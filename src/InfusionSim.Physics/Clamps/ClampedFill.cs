using InfusionSim.Physics.Air;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Gravity;
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
    // First step of trapped gas, and longest, over what is left of the fill; from a dry start the front has run a thousandth of its way after a millionth of it.
    private const double FirstStep = 0.005, FirstStepFromDry = 1e-6, LongestStep = 0.2;

    // What a stretch, and a step of trapped gas, are taken to be of the work that is left.
    private const double PartOfStretch = 0.7, PartOfGasStep = 0.03;

    // Moments that lie as near are one.
    private const double Tie = 1e-9;

    private readonly FillProblem _problem;
    private readonly FillConditions _conditions;
    private readonly int _moments;
    private readonly Action<double>? _progress;
    private readonly CancellationToken _cancellation;
    private FrontTrack _track;
    private readonly List<FillStretch> _stretches = [];
    private readonly List<ClampTurn> _turns = [];
    private readonly List<BagTurn> _bagTurns = [];
    private readonly List<ClampRule> _pending;
    private readonly Dictionary<Moment, double> _come = [];
    private readonly GasAtRest _rest = new();
    private readonly GasPace _pace;
    private LineClamps _clamps;
    private FillProblem? _clamped;
    private FillTotal? _total, _withoutGas;
    private IReadOnlyList<GasPocket> _pockets = [];
    private double _turnedAt, _takenUntil;

    // How the last step of trapped gas was computed and left the panel; null after a turn.
    private FillMarcher? _marcher;
    private FrontSample? _front;
    private GasHold? _gas;
    private int _gasSteps;

    private ClampedFill(FillProblem problem, FillConditions conditions, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        _problem = problem;
        _conditions = conditions;
        _pace = new GasPace(problem.PoreVolume.Sum());
        _moments = moments;
        _progress = progress;
        _cancellation = cancellation;
        _track = new FrontTrack(problem);
        _pending = [.. conditions.Rules?.Rules ?? []];
        _clamps = conditions.Rules?.Start ?? new LineClamps([.. problem.Feeds.Select(static _ => 1.0)], [.. problem.Vents.Select(static _ => 1.0)]);
    }

    /// <summary>Follows the fill to its end.</summary>
    /// <param name="problem">The panel as numbers, with all clamps open.</param>
    /// <param name="conditions">What is done, what drives it and leaks in.</param>
    /// <param name="before">A fill of the same panel under the same rules, whose minutes may come at other clocks; null for none.</param>
    /// <param name="moments">How many moments each stretch is first looked at [-].</param>
    /// <param name="progress">Told the share of the work that is done; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FillMap Follow(
        FillProblem problem, FillConditions conditions, FillMap? before, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        ClampedFill fill = new(problem, conditions, moments, progress, cancellation);
        FillStart? start = before is null ? FillStart.Dry(problem) : fill.GoAlong(before);
        while (start is not null) start = fill.FollowStretch(start);
        return fill.Map(withDue: true);
    }

    /// <summary>Follows one stretch; returns how the next one begins, or null at the end of the fill.</summary>
    private FillStart? FollowStretch(FillStart start)
    {
        FillProblem clamped = _clamped ??= ClampedProblem.Of(UnderBag(), _clamps);
        if (clamped.Heads is not null) return FollowOnSlope(clamped, start);
        if (BagPressure > 0 || _pockets.Count > 0) _pockets = GasRegions.At(clamped, _track.Arrival, start, BagPressure, _pockets);
        bool[] reached = Reach.From(clamped);
        LowPots.DemandNoneDraws(clamped, reached, start);
        if (_pockets.Count > 0)
        {
            // It changes little from step to step; what the answer needs of it not at all.
            _withoutGas ??= FillTotal.Of(clamped, reached, start, FillMarcher.ForecastTolerance, _cancellation);
            return FollowGas(clamped, start, _withoutGas);
        }

        FillTotal total = FillTotal.Of(clamped, reached, start, FillMarcher.ForecastTolerance, _cancellation);
        (_withoutGas, _front) = (null, null);
        _pace.Restart();
        double due = NextDue(start.Clock);
        bool fills = total.LastCell >= 0, isCut = due < total.Clock || !fills;
        double end = isCut ? due : total.Clock;
        if (double.IsPositiveInfinity(end)) return Finish(clamped, reached, start, total);
        FillStretch stretch = new(clamped, reached, start, end);
        FillMarcher marcher = stretch.NewMarcher(_track.Arrival);
        if (fills) FrontTracker.Follow(clamped, marcher, _track, start.Clock, end, _moments, Tell, _cancellation);
        _total = Merge(total, start);
        _stretches.Add(stretch with { Marcher = _stretches.Count == 0 ? marcher : null, Total = _total });

        (double clock, IReadOnlyList<ClampRule> rules) = First(start.Clock, end, isFull: !isCut);
        double cutOff = BagPressure > 0 ? PocketFinder.FirstSealed(clamped, _track.Arrival, start.Clock) : double.PositiveInfinity;
        if (cutOff < clock) (clock, rules) = (cutOff, []);
        else if (rules.Count == 0) return null;
        CutAt(clock);
        FillStart next = FillStart.From(marcher.StateAt(clock, withPressure: false, FillMarcher.HandOverTolerance, _cancellation));
        if (!isCut && clock == end) _rest.NoteFull(clamped, next, _total);
        foreach (ClampRule rule in rules) Make(rule, clock);
        return next;
    }

    /// <summary>Follows one stretch on a slope; returns how the next one begins, or null at the end of the fill.</summary>
    /// <remarks>A turn that leaves clamps and vacuum as they are cuts nothing: the stretch goes on in the same steps.</remarks>
    private FillStart? FollowOnSlope(FillProblem clamped, FillStart start)
    {
        bool[] reached = Reach.From(clamped);
        LowPots.DemandNoneDraws(clamped, reached, start);
        GravityFill fill = GravityMarch.Run(clamped, start, isPatient: _pending.Count > 0, _moments, share => Tell(share / 2), _cancellation);
        bool fills = fill.Total.LastCell >= 0;
        if (!fills && fill.Stopped is not null) throw fill.Stopped;
        double end = fills ? fill.Total.Clock : NextDue(start.Clock);
        if (double.IsPositiveInfinity(end)) return Finish(clamped, reached, start, fill.Total, fill);
        FillStretch stretch = new(clamped, reached, start, end) { Gravity = fill };
        FillMarcher marcher = stretch.NewMarcher(_track.Arrival);
        if (fills) FrontTracker.Follow(fill.Problem, marcher, _track, start.Clock, end, _moments, share => Tell((1 + share) / 2), _cancellation);
        _stretches.Add(stretch with { Marcher = _stretches.Count == 0 ? marcher : null });
        _total = Merge(fill.Total, start);
        double from = start.Clock;
        while (true)
        {
            (double clock, IReadOnlyList<ClampRule> rules) = First(from, end, isFull: fills && fill.Stopped is null);
            if (rules.Count == 0) return fill.Stopped is null ? null : throw fill.Stopped;
            (LineClamps before, double pressure) = (_clamps, BagPressure);
            foreach (ClampRule rule in rules) Make(rule, clock);
            from = clock;
            if (_clamps.AreAs(before) && BagPressure == pressure) continue;
            CutAt(clock);
            return FillStart.From(marcher.StateAt(clock, withPressure: false, FillMarcher.HandOverTolerance, _cancellation));
        }
    }

    /// <summary>Follows one step in which trapped gas pushes back; returns how the next stretch begins, or null when all has come to rest.</summary>
    private FillStart? FollowGas(FillProblem clamped, FillStart start, FillTotal withoutGas)
    {
        _total ??= Merge(withoutGas, start);
        bool[] reached = Reach.From(clamped, _pockets.SelectMany(static pocket => pocket.Nodes));
        double scale = Math.Max(withoutGas.Clock - start.Clock, start.Clock);
        if (_pace.Span == 0) _pace.Span = (start.IsDry ? FirstStepFromDry : FirstStep) * scale;
        double due = NextDue(start.Clock);
        if (_pace.Span == 0)
        {
            // Dry, and no feed open: nothing can move before one is.
            if (double.IsPositiveInfinity(due)) return Finish(clamped, reached, start, withoutGas);
            _pace.Span = due;
        }

        PocketLeak? leak = _conditions.Leak?.Invoke(ComeAt);
        if (leak is not null && start.Clock >= leak.Until) return Rest(clamped, start, withoutGas);
        due = Math.Min(due, Math.Max(start.Clock, leak?.Until ?? due));
        GasStepper stepper = new(clamped, reached, _track.Arrival, BagPressure, _conditions.Bag!.Ambient - BagPressure, leak) { Before = _marcher };
        // Where nothing moves any more, what is due is waited for in one step.
        bool rests = _rest.IsReachedSince(_turnedAt);
        if (rests) _pace.Span = due - start.Clock;
        double longest = rests ? double.PositiveInfinity : LongestStep * Math.Max(scale, start.Clock);
        FillStretch stretch = stepper.Step(start, _pockets, _pace, Math.Min(due - start.Clock, longest), _cancellation);
        FillMarcher marcher = _marcher = stretch.Marcher!;
        FillState state = marcher.StateAt(stretch.End, withPressure: true, FillMarcher.HandOverTolerance, _cancellation);
        if (!stretch.Gas!.GoesOnFrom(_gas)) _front = null;
        _front = FrontTracker.FollowStep(clamped, marcher, _track, _front, start.Clock, state, _cancellation);
        _gas = stretch.Gas;
        _stretches.Add(stretch with { Marcher = null });
        _gasSteps++;
        Tell(0);

        (double clock, IReadOnlyList<ClampRule> rules) = First(start.Clock, stretch.End, isFull: false);
        double cutOff = PocketFinder.FirstSealed(clamped, _track.Arrival, start.Clock);
        if (cutOff < clock) (clock, rules) = (cutOff, []);
        if (clock < stretch.End)
        {
            CutAt(clock);
            _front = null;
            state = marcher.StateAt(clock, withPressure: false, FillMarcher.HandOverTolerance, _cancellation);
        }

        FillStart next = FillStart.From(state);
        double[] amounts = stepper.AmountsAt(_pockets, start.Clock, clock);
        _pockets = [.. _pockets.Select((pocket, k) => pocket with { Nodes = state.GasNodes[k], Amount = amounts[k] })];
        foreach (int node in _pockets.SelectMany(static pocket => pocket.Nodes).Where(node => next.Saturation[node] < start.Saturation[node]))
            _track.Open(node, next.Saturation[node], clock);
        _rest.Note(clamped, withoutGas, start, state, _pockets, _turnedAt);
        if (rules.Count == 0 && _rest.IsReached)
        {
            rules = [.. _pending.Where(static rule => rule.When is WhenFull)];
            if (rules.Count == 0 && double.IsPositiveInfinity(NextDue(clock))) return Rest(clamped, next, withoutGas);
        }

        foreach (ClampRule rule in rules) Make(rule, clock);
        return next;
    }

    /// <summary>Goes along with a fill that was followed before as far as nothing differs; returns how it goes on from there, or null when that is the end.</summary>
    private FillStart? GoAlong(FillMap before)
    {
        double same = SameCourse.Until(before, _conditions), until = Math.Min(same, before.Stretches[^1].End);
        foreach ((double clock, Moment when) in SameCourse.TurnsOf(before).Where(turn => turn.Clock < same && turn.Clock <= until))
            foreach (ClampRule rule in _pending.Where(rule => rule.When == when).ToList()) Make(rule, clock);
        _takenUntil = same;
        _stretches.AddRange(before.Stretches.Where(stretch => stretch.Start.Clock < same).Select(static stretch => stretch with { Marcher = null }));
        if (double.IsPositiveInfinity(same))
        {
            (_track, _total, _pockets) = (before.Track, before.Total, before.Pockets);
            return null;
        }

        if (_stretches.Count == 0) return FillStart.Dry(_problem);
        FillStretch last = _stretches[^1];
        FillState state = before.StateIn(last, same, withPressure: false, FillMarcher.HandOverTolerance, _cancellation);
        _stretches[^1] = last with { End = same };
        (_track, _total) = (before.Track.Until(same), last.Total);
        return FillStart.From(state);
    }

    private FillStart? Rest(FillProblem clamped, FillStart end, FillTotal withoutGas)
    {
        _pockets = GasRegions.At(clamped, _track.Arrival, end, BagPressure, _pockets);
        _total = _rest.TotalOf(clamped, _track, _pockets, Merge(withoutGas, end));
        return null;
    }

    private double BagPressure => _bagTurns.Count > 0 ? _bagTurns[^1].Pressure : _conditions.Bag?.Pressure ?? 0;

    // What a pot above or below the panel adds or takes is another share of the drive once the vacuum is changed.
    private FillProblem UnderBag() => _conditions.Bag is Bag bag ? TiltedPanel.WithDrive(_problem, (bag.Ambient - bag.Pressure) / (bag.Ambient - BagPressure)) : _problem;

    private void CutAt(double clock)
    {
        if (!(clock < _stretches[^1].End)) return;
        _track.CutAt(clock);
        _stretches[^1] = _stretches[^1] with { End = clock };
    }

    // Nothing more flows and nothing is due: the stretch has no length.
    private FillStart? Finish(FillProblem clamped, bool[] reached, FillStart start, FillTotal total, GravityFill? gravity = null)
    {
        _stretches.Add(new FillStretch(clamped, reached, start, start.Clock) { Gravity = gravity });
        _total = Merge(total, start);
        return null;
    }

    private double NextDue(double from) => _pending.Select(static rule => rule.When).OfType<AtTime>()
        .Select(at => Math.Max(from, DueAt(at))).DefaultIfEmpty(double.PositiveInfinity).Min();

    private double DueAt(AtTime at) => _conditions.Rules!.ClockAt(at.Time, ComeAt);

    private double ComeAt(Moment moment) => _come.TryGetValue(moment, out double clock) ? clock : double.PositiveInfinity;

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
            if (clock > first * (1 + Tie)) continue;
            if (clock < first * (1 - Tie)) rules.Clear();
            first = Math.Min(first, clock);
            rules.Add(rule);
        }

        return (first, rules);
    }

    private double ClockOf(Moment when, FillMap map, double end, bool isFull) => when switch
    {
        AtTime at => DueAt(at),
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
        _come.TryAdd(rule.When, clock);
        _turnedAt = clock;
        _pace.Restart();
        _withoutGas = null;
        _front = null;
        _clamped = null;
        if (rule.IsOfBag)
        {
            _bagTurns.Add(new(clock, rule.Value) { When = rule.When });
            return;
        }

        ClampTurn turn = new(clock, rule.IsVent, rule.Line, rule.Value) { When = rule.When };
        _turns.Add(turn);
        _clamps = _clamps.After(turn);
    }

    // What an earlier stretch has filled stays full.
    private FillTotal Merge(FillTotal total, FillStart start)
    {
        if (start.IsDry) return total;
        bool[] fills = [.. total.Fills.Select((isIn, node) => isIn || start.Saturation[node] >= 1)];
        bool isLater = total.LastCell >= 0 || _total is null;
        return new FillTotal(isLater ? total.Clock : _total!.Clock, isLater ? total.LastCell : _total!.LastCell, total.SteadyPressure, fills);
    }

    private FillMap Map(bool withDue)
    {
        IEnumerable<ClampTurn> due = withDue
            ? _pending.Where(static rule => rule is { IsOfBag: false, When: AtTime })
                .Select(rule => new ClampTurn(DueAt((AtTime)rule.When), rule.IsVent, rule.Line, rule.Value) { When = rule.When })
            : [];
        IEnumerable<BagTurn> dueBag = withDue
            ? _pending.Where(static rule => rule is { IsOfBag: true, When: AtTime }).Select(rule => new BagTurn(DueAt((AtTime)rule.When), rule.Value) { When = rule.When })
            : [];
        return new FillMap(_problem, [.. _stretches], _track, _total!)
        {
            Turns = [.. _turns, .. due.OrderBy(static turn => turn.Clock)],
            Pockets = withDue ? _pockets : [],
            FollowsGas = _conditions.Bag is not null && _problem.Heads is null,
            TakenUntil = _takenUntil,
            ClockOf = ComeAt,
            BagTurns = [.. _bagTurns, .. dueBag.OrderBy(static turn => turn.Clock)],
        };
    }

    // How many turns and steps of trapped gas are still to come nobody knows: each takes its part of what is left.
    private void Tell(double share) => _progress?.Invoke(
        1 - (1 - PartOfStretch * share) * Math.Pow(1 - PartOfStretch, _stretches.Count - _gasSteps) * Math.Pow(1 - PartOfGasStep, _gasSteps));
}

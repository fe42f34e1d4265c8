using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>Follows a fill with gravity on a growing drive clock and notes when each node is full.</summary>
/// <remarks>
/// The state at a clock is one complementarity problem once it is known when each node was full (<see cref="GravityLoad"/>). Nodes that fill between
/// two moments are found by prediction and correction: the state at the later moment without what their weight moves, the
/// clock at which each was full from its pressure then, the state again with it, until those clocks stand still; where
/// they do not, the interval is halved, up to a thirty-second; where they do not even then the front has come to rest at that node, and either will do. No restart is needed. An error in a full clock shifts volume between two neighbours and is not made good later, so
/// the fill clock converges with the length of the intervals (second order seen in a straight fill), while volume is kept to rounding with any.
/// A node that is not full by a hundred times the clock at which half of what the resin can climb to is full counts as never full,
/// as for starved places: towards the height of its climb the resin comes to rest only in the limit.
/// </remarks>
internal sealed class GravityMarch
{
    private const double Settled = 0.01;
    private const double Astray = 0.25;
    private const int MendLimit = 6;
    private const int CorrectionLimit = 8;

    // Clocks that have not settled by then swing to and fro.
    private const int EagerCorrections = 2;
    private const int HalvingLimit = 5;
    private const int NewtonLimit = 30;
    private const double Tie = 1e-6;
    private const double EndTolerance = 1e-9;
    private const double LateStep = 1e-3;

    // Beyond the clock of the level fill the front only creeps: longer and longer steps.
    private const double LateGrowth = 1.06;

    // How far the solver may leave a pressure below that under the bag.
    private const double Rounding = 1e-3;
    private const double Emptied = 0.05;

    // Of what a full node holds: what it may seem to have lost by the error of a state at the end.
    private const double LostAtTheEnd = 1e-6;

    private readonly FillProblem _problem;
    private readonly FillStart _start;
    private readonly bool[] _climbed, _isFullBefore;
    private readonly bool _isPatient;
    private readonly GravityLoad _load;
    private readonly FillMarcher _marcher;
    private readonly FullClockEstimate _estimate;
    private readonly double[] _full;
    private readonly double _poreVolume;
    private double[] _before;
    private double _clock;
    private double _filled;

    private GravityMarch(FillProblem problem, bool[] climbed, FillStart start, bool isPatient)
    {
        _problem = problem;
        _climbed = climbed;
        _start = start;
        _isPatient = isPatient;
        _isFullBefore = [.. climbed.Select((isIn, node) => isIn && !start.IsDry && problem.PoreVolume[node] > 0 && start.IsFull(node))];
        _load = new GravityLoad(problem, _isFullBefore);
        _full = _load.FullClock;
        _marcher = new FillMarcher(problem, climbed, _load, start) { MendLimit = MendLimit };
        _estimate = new FullClockEstimate(problem);
        _before = new double[_full.Length];
        for (int cell = 0; cell < problem.Operator.CellCount; cell++) _poreVolume += climbed[cell] ? problem.PoreVolume[cell] : 0;
    }

    /// <summary>Follows a fill from dry to its end.</summary>
    /// <param name="problem">A problem with heads.</param>
    /// <param name="moments">Moments up to the end of the same fill without gravity [-], at least 2.</param>
    /// <param name="progress">Told the share of what the resin can climb to that is full; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ResinRunsBackException">When a full place would dry again.</exception>
    public static GravityFill Run(FillProblem problem, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        GravityFill fill = Run(problem, FillStart.Dry(problem), isPatient: false, moments, progress, cancellation);
        return fill.Stopped is null ? fill : throw fill.Stopped;
    }

    /// <summary>Follows a stretch of a fill to its end, or to where resin would run back.</summary>
    /// <param name="problem">A problem with heads, with the clamps as they stand.</param>
    /// <param name="start">The panel as the stretch begins.</param>
    /// <param name="isPatient">Whether to look closely for how far it gets before resin runs back.</param>
    /// <param name="moments">Moments up to the end of the same stretch without gravity [-], at least 2.</param>
    /// <param name="progress">Told the share of what the resin can climb to that is full; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ResinRunsBackException">When full places that no feed presses on would dry again.</exception>
    public static GravityFill Run(FillProblem problem, FillStart start, bool isPatient, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        bool[] climbed = Climb.Of(problem, start, FillMarcher.ForecastTolerance, cancellation);
        double[] atRest = RestingResin.PressureOf(problem, climbed, start);
        FillProblem below = Climb.Shut(problem, climbed);
        FillTotal level = FillTotal.Of(below, climbed, start, FillMarcher.TrackingTolerance, cancellation);
        GravityMarch march = new(below, climbed, start, isPatient);
        ResinRunsBackException? stopped = null;
        try
        {
            march.Follow(level.Clock - start.Clock, moments, progress, cancellation);
        }
        catch (ResinRunsBackException back)
        {
            stopped = back;
            march.Forget(march._clock);
        }

        march._marcher.MendLimit = FillMarcher.LongestMend;
        FillTotal total = march.TotalAt(stopped is null ? march.End(cancellation) : march.LastFull(), isAtEnd: stopped is null, cancellation);
        for (int node = 0; node < atRest.Length; node++) total.SteadyPressure[node] += atRest[node];
        return new GravityFill(below, climbed, start, march._load, total) { Stopped = stopped };
    }

    private void Follow(double levelClock, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        double half = double.PositiveInfinity, before = _start.Clock;
        for (int moment = 1; !IsFull && before + _clock < FillTotal.Starved * half && levelClock > 0; moment++)
        {
            double share = (double)moment / moments;
            double next = moment <= moments ? levelClock * share * share : _clock * LateGrowth;
            Advance(next, 0, cancellation);
            if (_filled >= _poreVolume / 2) half = Math.Min(half, before + _clock);
            progress?.Invoke(_poreVolume > 0 ? _filled / _poreVolume : 1);
        }
    }

    private bool IsFull
    {
        get
        {
            // Lines and hoses behind the panel may fill later; the panel is full without them.
            for (int cell = 0; cell < _problem.Operator.CellCount; cell++)
                if (_climbed[cell] && double.IsPositiveInfinity(_full[cell])) return false;
            return true;
        }
    }

    private void Advance(double clock, int halvings, CancellationToken cancellation)
    {
        double from = _clock;
        FillState state;
        for (int correction = 0; ; correction++)
        {
            try
            {
                state = _marcher.StateAt(_start.Clock + clock, withPressure: true, FillMarcher.TrackingTolerance, cancellation);
            }
            catch (ResinRunsBackException) when (_isPatient && halvings < HalvingLimit)
            {
                Halve(from, clock, halvings, cancellation);
                return;
            }

            double moved = Correct(state, from, clock, correction >= EagerCorrections);
            if (moved <= Settled && correction > 0 && _marcher.IsMended) break;
            bool isHopeless = correction > 0 && (moved > Astray || !_marcher.IsMended);
            if (correction < CorrectionLimit && !isHopeless) continue;
            if (halvings == HalvingLimit) break;
            Halve(from, clock, halvings, cancellation);
            return;
        }

        if (FirstDry(state, from, clock) is >= 0 and int dry)
        {
            if (!_isPatient || halvings == HalvingLimit) throw new ResinRunsBackException(RestingResin.PlaceOf(_problem, dry), _start.Clock + clock);
            Halve(from, clock, halvings, cancellation);
            return;
        }

        _load.Waits.Keep(from, clock);
        _before = state.AccumulatedPressure;
        _clock = clock;
        _filled = 0;
        for (int cell = 0; cell < _problem.Operator.CellCount; cell++) _filled += state.Saturation[cell] * _problem.PoreVolume[cell];
    }

    private void Halve(double from, double clock, int halvings, CancellationToken cancellation)
    {
        Forget(from);
        Advance((from + clock) / 2, halvings + 1, cancellation);
        Advance(clock, halvings + 1, cancellation);
    }

    /// <summary>Estimates the full clocks within an interval; returns how far they moved, mean over the volume that fills, over the interval.</summary>
    private double Correct(FillState state, double from, double to, bool cautious)
    {
        double moved = 0, volume = 0;
        for (int node = 0; node < _full.Length; node++)
        {
            if (!_climbed[node] || _full[node] <= from) continue;
            double known = Math.Min(_full[node], to);
            double found = state.AccumulatedPressure[node] > 0 ? Math.Clamp(to - _estimate.FullFor(state, _load, node), from, to) : double.PositiveInfinity;
            if (cautious && double.IsFinite(found) && double.IsFinite(_full[node])) found = (found + _full[node]) / 2;
            _full[node] = found;
            if (found > to && known >= to) continue;
            moved += _problem.PoreVolume[node] * Math.Abs(Math.Min(found, to) - known);
            volume += _problem.PoreVolume[node];
        }

        return volume > 0 ? moved / volume / (to - from) : 0;
    }

    private void Forget(double from)
    {
        for (int node = 0; node < _full.Length; node++)
            if (_full[node] > from) _full[node] = double.PositiveInfinity;
    }

    // A node just filled may come out not quite full again, by the error of its full clock; one that has been full for long may not.
    private int FirstDry(FillState state, double from, double to)
    {
        for (int node = 0; node < _full.Length; node++)
        {
            if (_full[node] > from || _load.RunsOff(node)) continue;
            double lost = _before[node] - state.AccumulatedPressure[node];
            bool isDrawn = lost > 0 && state.Pressure![node] < -Rounding;
            bool isEmptied = state.AccumulatedPressure[node] == 0 && lost > Emptied * (to - from);
            if (isDrawn || isEmptied) return node;
        }

        return _load.FirstLosing(to, state.AccumulatedPressure);
    }

    /// <summary>The clock at which the last cell is full, and which that is: from later clocks Newton's steps come down to it and never pass it, because the accumulated pressure is convex.</summary>
    private (double Clock, int Cell) End(CancellationToken cancellation)
    {
        int[] cells = [.. Enumerable.Range(0, _problem.Operator.CellCount)
            .Where(cell => _climbed[cell] && !_isFullBefore[cell] && double.IsFinite(_full[cell]))];
        if (cells.Length == 0 || !IsFull) return LastFull();

        double clock = _clock;
        double[] fullFor = [];
        for (int step = 0; step < NewtonLimit; step++)
        {
            FillState state = _marcher.StateAt(_start.Clock + clock, withPressure: true, cancellation: cancellation);
            fullFor = [.. cells.Select(cell => FullFor(state, cell, clock))];
            double back = fullFor.Min();
            clock -= back;
            if (back >= 0 && back <= EndTolerance * clock) break;
        }

        // Where states from below fill one cell after the other the steps may end astride the last one.
        int last = Array.FindIndex(fullFor, back => back <= Tie * clock);
        return (clock, cells[last >= 0 ? last : Array.IndexOf(fullFor, fullFor.Min())]);
    }

    /// <summary>The cell that is known to be full last and its clock since the start; −1 when none was filled.</summary>
    private (double Clock, int Cell) LastFull()
    {
        (double clock, int last) = (0, -1);
        for (int cell = 0; cell < _problem.Operator.CellCount; cell++)
            if (_climbed[cell] && !_isFullBefore[cell] && double.IsFinite(_full[cell]) && (last < 0 || _full[cell] > clock)) (clock, last) = (_full[cell], cell);
        return (clock, last);
    }

    // Below 0 for a cell that is not full: look again a little later.
    private static double FullFor(FillState state, int cell, double clock)
    {
        if (state.AccumulatedPressure[cell] > 0) return Math.Max(0, state.AccumulatedPressure[cell] / state.Pressure![cell]);
        return state.Saturation[cell] > 1 - Tie ? 0 : -LateStep * clock;
    }

    private FillTotal TotalAt((double Clock, int Cell) end, bool isAtEnd, CancellationToken cancellation)
    {
        // Where nothing fills any more any later moment shows the pressures.
        double look = Math.Max(end.Clock, _clock);
        if (look == 0) look = _start.Clock;
        FillState state = _marcher.StateAt(_start.Clock + look, withPressure: true, cancellation: cancellation);
        if (isAtEnd && _load.FirstLosing(look, state.AccumulatedPressure, LostAtTheEnd) is >= 0 and int losing)
            throw new ResinRunsBackException(RestingResin.PlaceOf(_problem, losing), state.Clock);
        bool[] fills = [.. _climbed.Select((isIn, node) => isIn && double.IsFinite(_full[node]))];
        return new FillTotal(_start.Clock + (isAtEnd ? end.Clock : _clock), end.Cell, state.Pressure!, fills);
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>Follows a fill with gravity on a growing drive clock and notes when each node is full.</summary>
/// <remarks>
/// The state at a clock is one complementarity problem once it is known when each node was full (<see cref="GravityLoad"/>). Nodes that fill between
/// two moments are found by prediction and correction: the state at the later moment without what their weight moves, the
/// clock at which each was full from its pressure then, the state again with it, until those clocks stand still; where
/// they do not, the interval is halved. No restart is needed. An error in a full clock shifts volume between two neighbours and is not made good later, so
/// the fill clock converges with the length of the intervals (second order seen in a straight fill), while volume is kept to rounding with any.
/// A node that is not full by a hundred times the clock at which half of what the resin can climb to is full counts as never full,
/// as for starved places: towards the height of its climb the resin comes to rest only in the limit.
/// </remarks>
internal sealed class GravityMarch
{
    private const double Settled = 0.01;
    private const int CorrectionLimit = 12;
    private const int HalvingLimit = 12;
    private const int NewtonLimit = 30;
    private const double EndTolerance = 1e-9;

    // Beyond the clock of the level fill the front only creeps: longer and longer steps.
    private const double LateGrowth = 1.06;

    // How far the solver may leave a pressure below that under the bag.
    private const double Rounding = 1e-3;

    private readonly FillProblem _problem;
    private readonly bool[] _climbed;
    private readonly GravityLoad _load;
    private readonly FillMarcher _marcher;
    private readonly FullClockEstimate _estimate;
    private readonly double[] _full;
    private readonly double _poreVolume;
    private double[] _before;
    private double _clock;
    private double _lastFrom;
    private double _filled;

    private GravityMarch(FillProblem problem, bool[] climbed)
    {
        _problem = problem;
        _climbed = climbed;
        _load = new GravityLoad(problem);
        _full = _load.FullClock;
        _marcher = new FillMarcher(problem, climbed, _load);
        _estimate = new FullClockEstimate(problem);
        _before = new double[_full.Length];
        for (int cell = 0; cell < problem.Operator.CellCount; cell++) _poreVolume += climbed[cell] ? problem.PoreVolume[cell] : 0;
    }

    /// <summary>Follows the fill to its end.</summary>
    /// <param name="problem">A problem with heads.</param>
    /// <param name="moments">Moments up to the end of the same fill without gravity [-], at least 2.</param>
    /// <param name="progress">Told the share of what the resin can climb to that is full; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ResinRunsBackException">When a full place would dry again.</exception>
    public static GravityFill Run(FillProblem problem, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        bool[] climbed = Climb.Of(problem, FillMarcher.ForecastTolerance, cancellation);
        FillProblem below = Climb.Shut(problem, climbed);
        FillTotal level = FillTotal.Of(below, climbed, FillMarcher.TrackingTolerance, cancellation);
        GravityMarch march = new(below, climbed);
        march.Follow(level.Clock, moments, progress, cancellation);
        double end = march.End(cancellation);
        return new GravityFill(below, climbed, march._load, march.TotalAt(end, cancellation));
    }

    private void Follow(double levelClock, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        double half = double.PositiveInfinity;
        for (int moment = 1; !IsFull && _clock < FillTotal.Starved * half && levelClock > 0; moment++)
        {
            double share = (double)moment / moments;
            double next = moment <= moments ? levelClock * share * share : _clock * LateGrowth;
            Advance(next, 0, cancellation);
            if (_filled >= _poreVolume / 2) half = Math.Min(half, _clock);
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
            state = _marcher.StateAt(clock, withPressure: true, FillMarcher.TrackingTolerance, cancellation);
            if (Correct(state, from, clock) <= Settled && correction > 0) break;
            if (correction < CorrectionLimit) continue;
            if (halvings == HalvingLimit) throw new FlowNotSolvedException($"The front against gravity was not found between drive clocks {from:G6} and {clock:G6}.");
            Forget(from);
            double middle = (from + clock) / 2;
            Advance(middle, halvings + 1, cancellation);
            Advance(clock, halvings + 1, cancellation);
            return;
        }

        DemandNoneDries(state, from, clock);
        _load.Waits.Keep(from, clock);
        _before = state.AccumulatedPressure;
        if (Array.Exists(_full, full => full > from && full <= clock)) _lastFrom = from;
        _clock = clock;
        _filled = 0;
        for (int cell = 0; cell < _problem.Operator.CellCount; cell++) _filled += state.Saturation[cell] * _problem.PoreVolume[cell];
    }

    /// <summary>Estimates the full clocks within an interval; returns how far they moved, mean over the volume that fills, over the interval.</summary>
    private double Correct(FillState state, double from, double to)
    {
        double moved = 0, volume = 0;
        for (int node = 0; node < _full.Length; node++)
        {
            if (!_climbed[node] || _full[node] <= from) continue;
            double known = Math.Min(_full[node], to);
            double found = state.AccumulatedPressure[node] > 0 ? Math.Clamp(to - _estimate.FullFor(state, _load, node), from, to) : double.PositiveInfinity;
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

    private void DemandNoneDries(FillState state, double from, double to)
    {
        for (int node = 0; node < _full.Length; node++)
        {
            if (_full[node] <= from && state.AccumulatedPressure[node] - _before[node] < -Rounding * (to - from))
                throw new ResinRunsBackException(PlaceOf(node), to);
        }
    }

    private Point2? PlaceOf(int node) => _problem.CellOf(node) is >= 0 and int cell ? _problem.Cells.CentroidOf(cell) : _problem.Network[node].At;

    /// <summary>The clock at which the last node is full: from later clocks Newton's steps come down to it and never pass it, because the accumulated pressure is convex.</summary>
    private double End(CancellationToken cancellation)
    {
        int[] last = [.. Enumerable.Range(0, _problem.Operator.CellCount).Where(node => _climbed[node] && double.IsFinite(_full[node]) && _full[node] > _lastFrom)];
        double end = last.Length == 0 ? 0 : last.Max(node => _full[node]);
        if (!IsFull || last.Length == 0) return end;
        double clock = _clock;
        for (int step = 0; step < NewtonLimit; step++)
        {
            FillState state = _marcher.StateAt(clock, withPressure: true, cancellation: cancellation);
            double back = last.Min(node => state.AccumulatedPressure[node] > 0 && state.Pressure![node] > 0 ? state.AccumulatedPressure[node] / state.Pressure[node] : 0);
            clock -= back;
            if (back <= EndTolerance * clock) break;
        }

        foreach (int node in last) _full[node] = Math.Min(_full[node], clock);
        return clock;
    }

    private FillTotal TotalAt(double end, CancellationToken cancellation)
    {
        int last = -1;
        bool[] fills = new bool[_full.Length];
        for (int node = 0; node < _full.Length; node++)
        {
            fills[node] = _climbed[node] && double.IsFinite(_full[node]);
            if (fills[node] && last < 0 && node < _problem.Operator.CellCount && _full[node] >= end * (1 - 1e-6)) last = node;
        }

        FillState state = _marcher.StateAt(Math.Max(end, _clock), withPressure: true, cancellation: cancellation);
        return new FillTotal(end, last, state.Pressure!, fills);
    }
}

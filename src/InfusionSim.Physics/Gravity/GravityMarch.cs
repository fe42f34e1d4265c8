using InfusionSim.Numerics.Geometry;
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

    private readonly FillProblem _problem;
    private readonly bool[] _climbed;
    private readonly GravityLoad _load;
    private readonly FillMarcher _marcher;
    private readonly FullClockEstimate _estimate;
    private readonly double[] _full;
    private readonly double _poreVolume;
    private double[] _before;
    private double _clock;
    private double _filled;

    private GravityMarch(FillProblem problem, bool[] climbed)
    {
        _problem = problem;
        _climbed = climbed;
        _load = new GravityLoad(problem);
        _full = _load.FullClock;
        _marcher = new FillMarcher(problem, climbed, _load) { MendLimit = MendLimit };
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
        march._marcher.MendLimit = FillMarcher.LongestMend;
        FillTotal total = march.TotalAt(march.End(cancellation), cancellation);
        return new GravityFill(below, climbed, march._load, total);
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
            double moved = Correct(state, from, clock, correction >= EagerCorrections);
            if (moved <= Settled && correction > 0 && _marcher.IsMended) break;
            bool isHopeless = correction > 0 && (moved > Astray || !_marcher.IsMended);
            if (correction < CorrectionLimit && !isHopeless) continue;
            if (halvings == HalvingLimit) break;
            Forget(from);
            double middle = (from + clock) / 2;
            Advance(middle, halvings + 1, cancellation);
            Advance(clock, halvings + 1, cancellation);
            return;
        }

        DemandNoneDries(state, from, clock);
        _load.Waits.Keep(from, clock);
        _before = state.AccumulatedPressure;
        _clock = clock;
        _filled = 0;
        for (int cell = 0; cell < _problem.Operator.CellCount; cell++) _filled += state.Saturation[cell] * _problem.PoreVolume[cell];
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
    private void DemandNoneDries(FillState state, double from, double to)
    {
        for (int node = 0; node < _full.Length; node++)
        {
            if (_full[node] > from) continue;
            double lost = _before[node] - state.AccumulatedPressure[node];
            bool isDrawn = lost > 0 && state.Pressure![node] < -Rounding;
            bool isEmptied = state.AccumulatedPressure[node] == 0 && lost > Emptied * (to - from);
            if (isDrawn || isEmptied) throw new ResinRunsBackException(PlaceOf(node), to);
        }
    }

    private Point2? PlaceOf(int node) => _problem.CellOf(node) is >= 0 and int cell ? _problem.Cells.CentroidOf(cell) : _problem.Network[node].At;

    /// <summary>The clock at which the last cell is full, and which that is: from later clocks Newton's steps come down to it and never pass it, because the accumulated pressure is convex.</summary>
    private (double Clock, int Cell) End(CancellationToken cancellation)
    {
        int[] cells = [.. Enumerable.Range(0, _problem.Operator.CellCount).Where(cell => _climbed[cell] && double.IsFinite(_full[cell]))];
        if (cells.Length == 0) return (0, -1);
        if (!IsFull)
        {
            double latest = cells.Max(cell => _full[cell]);
            return (latest, cells.First(cell => _full[cell] == latest));
        }

        double clock = _clock;
        double[] fullFor = [];
        for (int step = 0; step < NewtonLimit; step++)
        {
            FillState state = _marcher.StateAt(clock, withPressure: true, cancellation: cancellation);
            fullFor = [.. cells.Select(cell => FullFor(state, cell))];
            double back = fullFor.Min();
            clock -= back;
            if (back >= 0 && back <= EndTolerance * clock) break;
        }

        // Where states from below fill one cell after the other the steps may end astride the last one.
        int last = Array.FindIndex(fullFor, back => back <= Tie * clock);
        return (clock, cells[last >= 0 ? last : Array.IndexOf(fullFor, fullFor.Min())]);
    }

    // Below 0 for a cell that is not full: look again a little later.
    private static double FullFor(FillState state, int cell)
    {
        if (state.AccumulatedPressure[cell] > 0) return Math.Max(0, state.AccumulatedPressure[cell] / state.Pressure![cell]);
        return state.Saturation[cell] > 1 - Tie ? 0 : -LateStep * state.Clock;
    }

    private FillTotal TotalAt((double Clock, int Cell) end, CancellationToken cancellation)
    {
        FillState state = _marcher.StateAt(Math.Max(end.Clock, _clock), withPressure: true, cancellation: cancellation);
        bool[] fills = [.. _climbed.Select((isIn, node) => isIn && double.IsFinite(_full[node]))];
        return new FillTotal(end.Clock, end.Cell, state.Pressure!, fills);
    }
}

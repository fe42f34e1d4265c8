namespace InfusionSim.Physics.Flow;

/// <summary>When the front passes the middle of each cell, from the states on both sides of that moment.</summary>
/// <remarks>
/// What a cell would have taken in had it stayed empty, over what it can hold, is I = F + D w / C (share filled,
/// conductances, accumulated pressure): a smooth rising function of the clock that is ½ when the front is at the
/// middle. In one dimension the front lies δ cells beyond the middle, with I = ½(1+δ)² up to δ = 1 and 1 + δ² from
/// there on; δ rises nearly evenly, so it is δ that is interpolated, from its values and slopes at both clock values.
/// Where the state before says nothing of the cell yet, or the two sides disagree, the interval is halved by one more
/// state, down to a share of the fill that bounds the error by itself. Derived; second order, as checked against
/// bisected clocks in the verification.
/// </remarks>
internal sealed class FrontTracker
{
    private const double Unresolved = 2.5e-4;
    private const double SmallestInterval = 8e-4;

    private readonly FillProblem _problem;
    private readonly FillMarcher _marcher;
    private readonly double _end;
    private readonly double[] _diagonal;
    private readonly double[] _supply;
    private readonly double[] _arrival;
    private readonly List<FillMoment> _moments = [];

    private FrontTracker(FillProblem problem, FillMarcher marcher, double end)
    {
        _problem = problem;
        _marcher = marcher;
        _end = end;
        int count = problem.Operator.CellCount;
        _supply = problem.Supply();
        _diagonal = new double[count];
        _arrival = new double[count];
        for (int cell = 0; cell < count; cell++)
        {
            _diagonal[cell] = problem.Operator.DiagonalOf(cell);
            _arrival[cell] = problem.PoreVolume[cell] > 0 ? double.PositiveInfinity : double.NaN;
        }
    }

    /// <summary>Follows the front from the opening of the feeds to the end of the fill.</summary>
    /// <param name="problem">The panel as numbers.</param>
    /// <param name="marcher">Computes the states.</param>
    /// <param name="end">Drive clock at which the last place is full [-], above 0.</param>
    /// <param name="moments">How many clock values to begin with, at least 2.</param>
    /// <param name="progress">Told the share of the clock that is done; may be null.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>Arrival of each cell, +∞ where the front never comes, NaN without cloth [-]; and the moments computed, in order.</returns>
    public static (double[] Arrival, IReadOnlyList<FillMoment> Moments) Follow(
        FillProblem problem, FillMarcher marcher, double end, int moments, Action<double>? progress, CancellationToken cancellation)
    {
        FrontTracker tracker = new(problem, marcher, end);
        FrontSample before = tracker.Dry();
        for (int moment = 1; moment <= moments; moment++)
        {
            // The front slows down as the square root of time: even steps of the front.
            double share = (double)moment / moments;
            FrontSample after = tracker.Sample(end * share * share, cancellation);
            tracker.Resolve(before, after, cancellation);
            before = after;
            progress?.Invoke(share);
        }

        return (tracker._arrival, [.. tracker._moments.OrderBy(static moment => moment.Clock)]);
    }

    private void Resolve(FrontSample before, FrontSample after, CancellationToken cancellation)
    {
        bool smallest = after.Clock - before.Clock <= SmallestInterval * _end;
        bool halve = false;
        for (int cell = 0; cell < _arrival.Length; cell++)
        {
            if (!(before.Intake[cell] < 0.5 && after.Intake[cell] >= 0.5)) continue;
            _arrival[cell] = Passage(before, after, cell, out double disagreement);
            halve |= disagreement > Unresolved * _end;
        }

        if (!halve || smallest) return;
        FrontSample middle = Sample((before.Clock + after.Clock) / 2, cancellation);
        Resolve(before, middle, cancellation);
        Resolve(middle, after, cancellation);
    }

    private static double Passage(FrontSample before, FrontSample after, int cell, out double disagreement)
    {
        double from = before.Clock, to = after.Clock, width = to - from;
        double end = Beyond(after.Intake[cell], after.Rate[cell], out double endSlope);
        double byTangent = endSlope > 0 ? Math.Clamp(to - end / endSlope, from, to) : to;
        if (before.Intake[cell] <= 0)
        {
            disagreement = width;
            return byTangent;
        }

        double start = Beyond(before.Intake[cell], before.Rate[cell], out double startSlope);
        double root = CubicRoot(start, startSlope * width, end, endSlope * width) * width + from;
        double byChord = from + width * start / (start - end);
        disagreement = Math.Abs(root - byChord) / 4;
        return root;
    }

    /// <summary>How many cells the front lies beyond the middle of a cell, and how fast it goes.</summary>
    private static double Beyond(double intake, double rate, out double slope)
    {
        double root = intake < 2 ? Math.Sqrt(2 * intake) : Math.Sqrt(intake - 1);
        slope = intake < 2 ? rate / Math.Max(root, 1e-12) : rate / (2 * root);
        return intake < 2 ? root - 1 : root;
    }

    /// <summary>Where the cubic through two values with two slopes crosses 0, as a share of the interval; the first value is below 0, the second at least 0.</summary>
    private static double CubicRoot(double first, double firstSlope, double second, double secondSlope)
    {
        double low = 0, high = 1, at = first / (first - second);
        for (int step = 0; step < 40; step++)
        {
            double rest = 1 - at;
            double value = rest * rest * ((1 + 2 * at) * first + at * firstSlope) + at * at * ((1 + 2 * rest) * second - rest * secondSlope);
            if (value < 0) low = at;
            else high = at;
            double slope = 6 * at * rest * (second - first) + rest * (1 - 3 * at) * firstSlope + at * (3 * at - 2) * secondSlope;
            double next = slope > 0 ? at - value / slope : double.NaN;
            if (!(next > low && next < high)) next = (low + high) / 2;
            if (Math.Abs(next - at) < 1e-12) return next;
            at = next;
        }

        return at;
    }

    private FrontSample Dry() => new(0, new double[_arrival.Length], new double[_arrival.Length]);

    private FrontSample Sample(double clock, CancellationToken cancellation)
    {
        FillState state = _marcher.StateAt(clock, withPressure: true, cancellation);
        _moments.Add(new FillMoment(clock, state.FilledFraction, state.ResinIn.Sum(), state.ResinOut.Sum(), state.MassBalanceError));
        int columns = _problem.Operator.Columns, count = _arrival.Length;
        double[] east = _problem.Operator.East, north = _problem.Operator.North, w = state.AccumulatedPressure, p = state.Pressure!;
        double[] intake = new double[count], rate = new double[count];
        for (int cell = 0; cell < count; cell++)
        {
            double capacity = _problem.PoreVolume[cell];
            if (capacity <= 0) continue;
            if (w[cell] > 0)
            {
                intake[cell] = 1 + _diagonal[cell] * w[cell] / capacity;
                rate[cell] = _diagonal[cell] * p[cell] / capacity;
                continue;
            }

            intake[cell] = state.Saturation[cell];
            if (intake[cell] <= 0) continue;
            double inflow = _supply[cell] + east[cell] * Right(p, cell, columns) + north[cell] * Above(p, cell, columns);
            if (cell % columns > 0) inflow += east[cell - 1] * p[cell - 1];
            if (cell >= columns) inflow += north[cell - columns] * p[cell - columns];
            rate[cell] = inflow / capacity;
        }

        return new FrontSample(clock, intake, rate);
    }

    private static double Right(double[] p, int cell, int columns) => (cell + 1) % columns != 0 ? p[cell + 1] : 0;

    private static double Above(double[] p, int cell, int columns) => cell + columns < p.Length ? p[cell + columns] : 0;


    private readonly record struct FrontSample(double Clock, double[] Intake, double[] Rate);
}

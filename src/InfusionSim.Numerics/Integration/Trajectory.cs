namespace InfusionSim.Numerics.Integration;

/// <summary>The solution of a system of ordinary differential equations, found once and read at any time.</summary>
/// <remarks>
/// Steps of order 5 whose length follows their error. Between two nodes the state is found by one shorter step from the earlier node, so it is as
/// good there as at the nodes.
/// </remarks>
public sealed class Trajectory
{
    private const int MostSteps = 200_000;

    private readonly Slope slope;

    private readonly List<double> times = [];

    private readonly List<double[]> states = [];

    private Trajectory(Slope slope) => this.slope = slope;

    /// <summary>Start [-].</summary>
    public double From => times[0];

    /// <summary>Where it was left off [-].</summary>
    public double To => times[^1];

    /// <summary>Times of the nodes [-].</summary>
    public IReadOnlyList<double> Times => times;

    /// <summary>Follows a system.</summary>
    /// <param name="slope">Its right side, smooth between the breaks.</param>
    /// <param name="start">Unknowns at the start, each in its own unit [-].</param>
    /// <param name="breaks">Start, kinks of the right side, and end, ascending [-]; at least two.</param>
    /// <param name="tolerance">Error allowed in a step, relative to the unknown and to 1 [-].</param>
    /// <param name="isDone">Stops early after a node; may be null.</param>
    /// <exception cref="StiffEquationsException">When it takes more than 200,000 steps, or steps too short to count.</exception>
    public static Trajectory Follow(Slope slope, IReadOnlyList<double> start, IReadOnlyList<double> breaks, double tolerance, Func<double[], bool>? isDone = null)
    {
        ArgumentNullException.ThrowIfNull(slope);
        ArgumentNullException.ThrowIfNull(start);
        ArgumentNullException.ThrowIfNull(breaks);
        if (breaks.Count < 2) throw new ArgumentException("A trajectory needs a start and an end.", nameof(breaks));
        Trajectory trajectory = new(slope);
        trajectory.times.Add(breaks[0]);
        trajectory.states.Add([.. start]);
        DormandPrince method = new(slope, start.Count);
        double step = (breaks[^1] - breaks[0]) * 1e-9;
        for (int k = 1; k < breaks.Count; k++)
            if (!trajectory.FollowTo(breaks[k], method, ref step, tolerance, isDone)) break;
        return trajectory;
    }

    /// <summary>The unknowns at a time; before the start those at the start, after the end those at the end. [unknowns], each in its own unit [-].</summary>
    /// <param name="time">The time [-].</param>
    public double[] At(double time)
    {
        if (time >= To) return states[^1];
        int found = times.BinarySearch(time);
        int node = Math.Max(0, found >= 0 ? found : ~found - 1);
        if (!(time > times[node])) return states[node];
        var after = new double[states[node].Length];
        new DormandPrince(slope, after.Length).Step(times[node], states[node], time - times[node], after, []);
        return after;
    }

    /// <summary>When an unknown that never falls reaches a value [-]; +∞ when it does not before the end.</summary>
    /// <param name="unknown">Which one.</param>
    /// <param name="value">The value [-].</param>
    public double WhenReaches(int unknown, double value)
    {
        int node = states.FindIndex(state => state[unknown] >= value);
        if (node < 0) return double.PositiveInfinity;
        if (node == 0) return From;
        return WhenTurns(times[node - 1], times[node], time => At(time)[unknown] - value);
    }

    /// <summary>When a quantity turns from below 0 to 0 or above [-].</summary>
    /// <param name="low">A time at which it lies below 0 [-].</param>
    /// <param name="high">A later time at which it does not [-].</param>
    /// <param name="quantity">The quantity at a time.</param>
    public static double WhenTurns(double low, double high, Func<double, double> quantity)
    {
        ArgumentNullException.ThrowIfNull(quantity);
        for (double middle = (low + high) / 2; middle > low && middle < high; middle = (low + high) / 2)
            if (quantity(middle) >= 0) high = middle; else low = middle;
        return high;
    }

    private bool FollowTo(double end, DormandPrince method, ref double step, double tolerance, Func<double[], bool>? isDone)
    {
        int unknowns = states[0].Length;
        double[] after = new double[unknowns], error = new double[unknowns];
        while (times[^1] < end)
        {
            if (times.Count > MostSteps || !(step > 0)) throw new StiffEquationsException();
            double time = times[^1];
            bool isLast = time + step * (1 + 1e-12) >= end;
            double taken = isLast ? end - time : step;
            method.Step(time, states[^1], taken, after, error);
            double size = 0;
            for (int k = 0; k < unknowns; k++) size = Math.Max(size, Math.Abs(error[k]) / (tolerance * Math.Max(1, Math.Abs(states[^1][k]))));
            double factor = size == 0 ? 5 : Math.Clamp(0.9 * Math.Pow(size, -0.2), 0.2, 5);
            if (!(size <= 1))
            {
                step = taken * (double.IsFinite(size) ? factor : 0.1);
                continue;
            }

            times.Add(isLast ? end : time + taken);
            states.Add([.. after]);
            if (!isLast || factor < 1) step = taken * factor;
            if (isDone?.Invoke(states[^1]) == true) return false;
        }

        return true;
    }
}

using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>For how long the front has waited before each node because the pressure below did not lift the resin up to its middle.</summary>
/// <remarks>
/// A node that is not full may give back what it holds, but no more: then the ways up into it stand still until the pressure below has risen. The time they
/// stood still is found by the secant method, node by node, from the volume that would be missing; it never grows shorter, and is remembered over the clock so
/// that any state can be found again. Derived.
/// </remarks>
internal sealed class FrontWaits
{
    // Of what a node holds; far below what the volume balance of a forecast can tell.
    private const double Missing = 1e-10;

    private readonly FillProblem _problem;
    private readonly bool[] _isFullBefore, _mayRunOff;
    private readonly double[] _wait;
    private readonly Dictionary<int, List<(double Clock, double Wait)>> _kept = [];
    private readonly Dictionary<int, (double Wait, double Missing)> _tried = [];
    private readonly HashSet<int> _waiting = [];
    private readonly List<NodeNeighbour> _neighbours = [];

    /// <summary>Makes a record without waits.</summary>
    /// <param name="problem">A problem with heads.</param>
    /// <param name="isFullBefore">Whether each node is full as the stretch begins: no front waits before it, but where it touches a line, resin
    /// runs off down that no faster than it comes. [nodes].</param>
    public FrontWaits(FillProblem problem, bool[] isFullBefore)
    {
        _isFullBefore = isFullBefore;
        _mayRunOff = new bool[isFullBefore.Length];
        foreach (var line in problem.Feeds.Concat(problem.Vents))
            foreach (var contact in line.Contacts) _mayRunOff[contact.Cell] |= contact.LineNode >= 0 && isFullBefore[contact.Cell];
        _problem = problem;
        _wait = new double[problem.Operator.NodeCount];
    }

    /// <summary>How long the ways up into a node have stood still at the clock recalled last [-].</summary>
    /// <param name="node">The node.</param>
    public double this[int node] => _wait[node];

    /// <summary>Recalls the waits kept for a clock; between two of them they grow evenly.</summary>
    /// <param name="clock">Drive clock [-].</param>
    public void Recall(double clock)
    {
        foreach (int node in _waiting) _wait[node] = 0;
        _waiting.Clear();
        _tried.Clear();
        foreach ((int node, List<(double Clock, double Wait)> kept) in _kept)
        {
            _wait[node] = At(kept, clock);
            _waiting.Add(node);
        }
    }

    /// <summary>Keeps the present waits for a clock later than all kept before.</summary>
    /// <param name="from">Clock from which those that are new have grown [-].</param>
    /// <param name="clock">Drive clock [-].</param>
    public void Keep(double from, double clock)
    {
        foreach (int node in _waiting)
        {
            if (_wait[node] == 0) continue;
            if (!_kept.TryGetValue(node, out List<(double Clock, double Wait)>? kept)) _kept[node] = kept = [(from, 0)];
            if (kept[^1].Wait < _wait[node]) kept.Add((from, kept[^1].Wait));
            kept.Add((clock, _wait[node]));
        }
    }

    /// <summary>Lengthens the wait before each node that is not full and would hold less than nothing.</summary>
    /// <param name="clock">Drive clock [-].</param>
    /// <param name="accumulated">Accumulated pressure [-]. [nodes].</param>
    /// <param name="supply">What feeds give per unit of clock [m³]. [nodes].</param>
    /// <param name="volume">What weight has brought [m³]. [nodes].</param>
    /// <param name="fullClock">Clock at which each node is full [-]. [nodes].</param>
    /// <returns>Whether any wait has changed.</returns>
    public bool Extend(double clock, double[] accumulated, double[] supply, double[] volume, double[] fullClock)
    {
        bool changed = false;
        for (int node = 0; node < accumulated.Length; node++)
        {
            if (!(volume[node] < 0) || accumulated[node] > 0 || _problem.PoreVolume[node] == 0 || (_isFullBefore[node] && !_mayRunOff[node])) continue;
            _problem.Operator.CollectNeighbours(node, _neighbours);
            double held = supply[node] * clock + volume[node], lift = 0, longest = 0;
            foreach ((int other, double conductance) in _neighbours)
            {
                held += conductance * accumulated[other];
                double rise = _problem.Heads![node] - _problem.Heads[other];
                double first = _isFullBefore[node] ? 0 : fullClock[other];
                if (rise <= 0 || first >= clock) continue;
                lift += conductance * rise;
                longest = Math.Max(longest, clock - first);
            }

            if (held >= -Missing * _problem.PoreVolume[node] || lift == 0 || _wait[node] >= longest) continue;
            double slope = lift / 2;
            if (_tried.TryGetValue(node, out (double Wait, double Missing) before) && _wait[node] > before.Wait)
                slope = Math.Clamp((before.Missing + held) / (_wait[node] - before.Wait), 1e-3 * lift, lift);
            _tried[node] = (_wait[node], -held);
            _wait[node] = Math.Min(longest, _wait[node] - held / slope);
            _waiting.Add(node);
            changed = true;
        }

        return changed;
    }

    private static double At(List<(double Clock, double Wait)> kept, double clock)
    {
        int after = kept.FindIndex(entry => entry.Clock >= clock);
        if (after < 0) return kept[^1].Wait;
        if (after == 0) return kept[0].Wait;
        (double Clock, double Wait) low = kept[after - 1], high = kept[after];
        return high.Clock > low.Clock ? low.Wait + (high.Wait - low.Wait) * (clock - low.Clock) / (high.Clock - low.Clock) : high.Wait;
    }
}

using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Gravity;

/// <summary>What the weight of the resin moves from node to node, as the part of the load that does not grow with the clock from the start.</summary>
/// <remarks>
/// With heads γ = ρ g z/Δp the flow from i to j is T (pᵢ − pⱼ − (γⱼ − γᵢ)). A way carries nothing until the first of its two
/// nodes is full, and from then on all of it, for the front stands at the pressure under the bag in the middle of the node it fills. Summed over
/// the drive clock θ from the opening, with wᵢ = ∫ pᵢ dθ and the clock τ at which each node is full, node i has taken in
///   Σⱼ T (wⱼ − wᵢ) + Σⱼ T (γⱼ − γᵢ) max(0, θ − min(τᵢ, τⱼ)) + what the feeds gave,
/// and a node that is not full has w = 0, because up to now it held the pressure under the bag. So the state at θ is again one
/// linear complementarity problem, with the second sum as an extra load; what leaves one node enters another, so no volume is lost
/// whatever τ is taken. Derived, on the transform of Elliott and Janovský, Proc. R. Soc. Edinburgh A 88 (1981) 93 (from memory).
/// An empty node gives nothing back: where the pressure below does not lift the resin to its middle the front waits, and the ways up into it carry
/// no weight for that long (<see cref="FrontWaits"/>). A stretch that begins with full nodes counts their clock as 0; one of them that a line could draw empty
/// downhill gives no more than it gets, in the same way.
/// </remarks>
internal sealed class GravityLoad
{
    private readonly double[] _heads, _supply, _full;
    private readonly FillProblem _problem;
    private readonly bool[] _isFullBefore;
    private readonly List<NodeNeighbour> _neighbours = [];
    private readonly List<(int Low, int High, double Rate)> _ways = [];

    /// <summary>Makes the load of a network.</summary>
    /// <param name="problem">A problem with heads.</param>
    /// <param name="isFullBefore">Whether each node is full as the stretch begins; its ways carry weight from the first. [nodes].</param>
    public GravityLoad(FillProblem problem, bool[] isFullBefore)
    {
        _problem = problem;
        _isFullBefore = isFullBefore;
        LatticeOperator network = problem.Operator;
        _heads = problem.Heads!;
        _supply = problem.Supply();
        FullClock = new double[network.NodeCount];
        for (int node = 0; node < FullClock.Length; node++) FullClock[node] = isFullBefore[node] ? 0 : double.PositiveInfinity;
        _full = new double[network.NodeCount];
        Volume = new double[network.NodeCount];
        Rate = new double[network.NodeCount];
        Waits = new FrontWaits(problem, isFullBefore);
        List<NodeNeighbour> neighbours = [];
        for (int node = 0; node < FullClock.Length; node++)
        {
            network.CollectNeighbours(node, neighbours);
            foreach ((int other, double conductance) in neighbours)
                if (_heads[other] > _heads[node]) _ways.Add((node, other, conductance * (_heads[other] - _heads[node])));
        }
    }

    /// <summary>Drive clock since the stretch began at which each node is full [-]; +∞ as long as that is not known. [nodes].</summary>
    public double[] FullClock { get; }

    /// <summary>For how long the front has waited before each node.</summary>
    public FrontWaits Waits { get; }

    /// <summary>Volume that weight has brought each node up to the clock set last [m³], below 0 where it has drawn from it. [nodes].</summary>
    public double[] Volume { get; }

    /// <summary>How fast that volume grows with the clock [m³]. [nodes].</summary>
    public double[] Rate { get; }

    /// <summary>Pressure that weight has taken on a way between two nodes, accumulated up to a clock [-]; below 0 downhill.</summary>
    /// <param name="from">Node at one end.</param>
    /// <param name="to">Node at the other.</param>
    /// <param name="clock">Drive clock [-].</param>
    public double AccumulatedLift(int from, int to, double clock)
    {
        double rise = _heads[to] - _heads[from];
        return rise > 0 ? rise * Carried(from, to, clock) : rise * Carried(to, from, clock);
    }

    /// <summary>Computes volume and rate at a clock.</summary>
    /// <param name="clock">Drive clock since the stretch began [-].</param>
    public void SetClock(double clock)
    {
        FullClock.CopyTo(_full, 0);
        Waits.Recall(clock);
        Spread(clock);
    }

    /// <summary>Mends what does not fit a state: a node known as full that is not yet, and an empty node that would have given resin back; computes volume and rate anew.</summary>
    /// <param name="clock">Drive clock [-].</param>
    /// <param name="accumulated">Accumulated pressure found with the present volume [-]. [nodes].</param>
    /// <returns>Whether any volume has changed.</returns>
    public bool Mend(double clock, double[] accumulated)
    {
        bool changed = false;
        for (int node = 0; node < _full.Length; node++)
        {
            if (_full[node] >= clock || accumulated[node] > 0 || _isFullBefore[node]) continue;
            _full[node] = double.PositiveInfinity;
            changed = true;
        }

        if (changed) Spread(clock);
        if (Waits.Extend(clock, accumulated, _supply, Volume, _full)) changed = true;
        else return changed;
        Spread(clock);
        return changed;
    }

    /// <summary>Whether resin runs off from a full node down a line as fast as it comes.</summary>
    /// <param name="node">The node.</param>
    public bool RunsOff(int node) => _isFullBefore[node] && Waits[node] > 0;

    /// <summary>The first node that was full before, holds no pressure and would have given back more than rounding [-]; −1 for none.</summary>
    /// <param name="clock">Drive clock since the stretch began [-].</param>
    /// <param name="accumulated">Accumulated pressure [-]. [nodes].</param>
    /// <param name="share">How much of what it holds is rounding [-].</param>
    public int FirstLosing(double clock, double[] accumulated, double share = 1e-3)
    {
        for (int node = 0; node < accumulated.Length; node++)
        {
            if (!_isFullBefore[node] || accumulated[node] > 0) continue;
            double offered = _supply[node] * clock + Volume[node];
            _problem.Operator.CollectNeighbours(node, _neighbours);
            foreach ((int other, double conductance) in _neighbours) offered += conductance * accumulated[other];
            if (offered < -share * _problem.PoreVolume[node]) return node;
        }

        return -1;
    }

    private void Spread(double clock)
    {
        Array.Clear(Volume);
        Array.Clear(Rate);
        foreach ((int low, int high, double rate) in _ways)
        {
            double carried = Carried(low, high, clock);
            if (carried == 0) continue;
            Volume[low] += rate * carried;
            Volume[high] -= rate * carried;

            // What runs off no faster than it comes does so evenly.
            double now = RunsOff(high) ? rate * carried / clock : rate;
            Rate[low] += now;
            Rate[high] -= now;
        }
    }

    private double Carried(int low, int high, double clock)
    {
        double first = Math.Min(_full[low], _full[high]);
        if (!(clock > first)) return 0;
        double waited = Waits[high];
        if (waited > 0 && !_isFullBefore[high]) waited = Math.Min(waited, Math.Max(0, _full[high] - _full[low]));
        return Math.Max(0, clock - first - waited);
    }
}

using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Physics.Air;

/// <summary>Finds which dry places are cut off at a moment of a fill, and what gas they hold: pockets split, merge, come into being and are freed.</summary>
/// <remarks>
/// A dry place is what air can pass through between nodes that the front has not passed the middle of; nodes it has passed but not filled keep their gas to the
/// dry place beside them. Gas of a pocket that has come apart is shared by volume; pockets that meet, and dry places that were at the pressure under the bag,
/// add up. A pocket that meets an open vent is freed.
/// </remarks>
internal sealed class GasRegions
{
    private const double Tie = 1e-6;

    private readonly FillProblem _problem;
    private readonly AirWays _ways;
    private readonly double[] _arrival, _saturation;
    private readonly double _clock, _bagPressure;
    private readonly IReadOnlyList<GasPocket> _before;
    private readonly int[] _region, _pocketBefore;
    private readonly List<List<int>> _nodes = [];
    private readonly List<bool> _isVented = [];

    private GasRegions(FillProblem problem, double[] arrival, FillStart start, double bagPressure, IReadOnlyList<GasPocket> before)
    {
        _problem = problem;
        _ways = new AirWays(problem);
        _arrival = arrival;
        _saturation = start.Saturation;
        _clock = start.Clock;
        _bagPressure = bagPressure;
        _before = before;
        _region = new int[arrival.Length];
        _pocketBefore = new int[arrival.Length];
        Array.Fill(_region, -1);
        Array.Fill(_pocketBefore, -1);
        for (int pocket = 0; pocket < before.Count; pocket++)
            foreach (int node in before[pocket].Nodes) _pocketBefore[node] = pocket;
    }

    /// <summary>The pockets there are.</summary>
    /// <param name="problem">The panel as numbers, with the clamps as they stand.</param>
    /// <param name="arrival">When the front passed each node [-]. [nodes].</param>
    /// <param name="start">The panel at that moment.</param>
    /// <param name="bagPressure">Absolute pressure under the bag [Pa].</param>
    /// <param name="before">The pockets up to then; each node that is not full belongs to at most one.</param>
    public static IReadOnlyList<GasPocket> At(FillProblem problem, double[] arrival, FillStart start, double bagPressure, IReadOnlyList<GasPocket> before)
    {
        GasRegions regions = new(problem, arrival, start, bagPressure, before);
        regions.FindDry();
        regions.AddRims();
        return regions.Pockets();
    }

    private bool IsDry(int node) => _problem.PoreVolume[node] > 0 && _arrival[node] > _clock * (1 + Tie) && _saturation[node] < 1;

    private double GasIn(int node) => _problem.PoreVolume[node] * (1 - _saturation[node]);

    private void FindDry()
    {
        HashSet<int> atVents = [];
        for (int vent = 0; vent < _problem.Vents.Count; vent++)
        {
            if (!_problem.VentIsOpen[vent]) continue;
            foreach (CellContact contact in _problem.Vents[vent].Contacts) if (contact.IsBeside) atVents.Add(contact.Cell);
        }

        for (int node = 0; node < _region.Length; node++)
        {
            if (_region[node] < 0 && IsDry(node)) Flood(node, IsDry, atVents.Contains);
        }
    }

    private void Flood(int seed, Func<int, bool> belongs, Func<int, bool> isVent)
    {
        List<int> nodes = [seed];
        bool vented = false;
        _region[seed] = _nodes.Count;
        for (int k = 0; k < nodes.Count; k++)
        {
            vented |= isVent(nodes[k]);
            foreach (int beside in _ways.From(nodes[k]))
            {
                if (_region[beside] >= 0 || !belongs(beside)) continue;
                _region[beside] = _nodes.Count;
                nodes.Add(beside);
            }
        }

        _nodes.Add(nodes);
        _isVented.Add(vented);
    }

    private void AddRims()
    {
        List<(int Node, int Region)> rims = [];
        for (int node = 0; node < _region.Length; node++)
        {
            if (_region[node] >= 0 || _problem.PoreVolume[node] <= 0 || _saturation[node] >= 1) continue;
            int[] beside = [.. _ways.From(node).Select(other => _region[other]).Where(static region => region >= 0).Distinct()];
            int pocket = _pocketBefore[node];
            int region = pocket >= 0
                ? beside.OrderByDescending(one => _nodes[one].Any(other => _pocketBefore[other] == pocket)).ThenBy(static one => one).DefaultIfEmpty(-1).First()
                : beside.Length > 0 && beside.All(one => !_isVented[one]) ? beside[0] : -1;
            if (region >= 0) rims.Add((node, region));
        }

        foreach ((int node, int region) in rims)
        {
            _region[node] = region;
            _nodes[region].Add(node);
        }

        // What is left of a pocket that no dry node remains of.
        for (int node = 0; node < _region.Length; node++)
        {
            int pocket = _pocketBefore[node];
            if (_region[node] >= 0 || pocket < 0 || _saturation[node] >= 1) continue;
            Flood(node, other => _pocketBefore[other] == pocket && _saturation[other] < 1, static _ => false);
        }
    }

    private List<GasPocket> Pockets()
    {
        double[] gasBefore = new double[_before.Count];
        for (int node = 0; node < _region.Length; node++) if (_pocketBefore[node] >= 0) gasBefore[_pocketBefore[node]] += GasIn(node);
        double[] amounts = [.. _nodes.Select(nodes => nodes.Sum(node => AmountIn(node, gasBefore)))];
        List<GasPocket> pockets = [];
        bool[] isKept = KeepLarge(amounts);
        for (int region = 0; region < _nodes.Count; region++)
        {
            // In a perfect vacuum nothing is sealed in; gas that was sealed in before stays.
            if (!isKept[region] || amounts[region] <= 0) continue;
            int[] held = HeldBy(region);
            pockets.Add(held.Length == 0
                ? new(_nodes[region], amounts[region], _clock, DryAreaOf(_nodes[region]))
                : new(_nodes[region], amounts[region], held.Min(pocket => _before[pocket].SealedClock), held.Sum(pocket => _before[pocket].SealedArea)));
        }

        return pockets;
    }

    private int[] HeldBy(int region) => [.. _nodes[region].Select(node => _pocketBefore[node]).Where(static pocket => pocket >= 0).Distinct()];

    private double AmountIn(int node, double[] gasBefore)
    {
        int pocket = _pocketBefore[node];
        if (pocket < 0) return _bagPressure * GasIn(node);
        return gasBefore[pocket] > 0 ? _before[pocket].Amount * GasIn(node) / gasBefore[pocket] : 0;
    }

    /// <summary>Which regions are pockets. What breaks off a pocket and is too small to count is noise of the squares: its gas stays with the largest part that was of the same pocket.</summary>
    private bool[] KeepLarge(double[] amounts)
    {
        bool[] isKept = new bool[_nodes.Count];
        for (int region = 0; region < _nodes.Count; region++)
        {
            // A line that is shut and touches nothing dry any more is no pocket.
            bool isCloth = _nodes[region].Exists(node => _problem.CellOf(node) >= 0);
            isKept[region] = !_isVented[region] && isCloth && (IsLargeEnough(_nodes[region]) || HeldBy(region).Length > 0);
        }

        // Where the rest of it has found a vent it goes with it.
        int[] freed = [.. Enumerable.Range(0, _nodes.Count).Where(region => _isVented[region]).SelectMany(HeldBy).Distinct()];
        for (int region = 0; region < _nodes.Count; region++)
            if (isKept[region] && !IsLargeEnough(_nodes[region]) && HeldBy(region).All(freed.Contains)) isKept[region] = false;

        int[] bySize = [.. Enumerable.Range(0, _nodes.Count).Where(region => isKept[region]).OrderByDescending(region => _nodes[region].Sum(GasIn))];
        foreach (int small in bySize.Reverse().Where(region => !IsLargeEnough(_nodes[region])))
        {
            int[] held = HeldBy(small);
            int rest = Array.Find(bySize, region => region != small && isKept[region] && HeldBy(region).Intersect(held).Any());
            if (rest == small || bySize.Length < 2 || !HeldBy(rest).Intersect(held).Any()) continue;
            isKept[small] = false;
            amounts[rest] += amounts[small];
        }

        return isKept;
    }

    private bool IsLargeEnough(List<int> nodes)
    {
        int smallest = PocketFinder.SmallestIn(_problem);
        return nodes.Count >= smallest
            && nodes.Where(node => IsDry(node) && _problem.CellOf(node) >= 0 && _problem.StaysInPart(node)).Select(_problem.CellOf).Distinct().Take(smallest).Count() == smallest;
    }

    private double DryAreaOf(List<int> nodes)
    {
        DryColumns columns = new(_problem);
        foreach (int node in nodes) columns.Add(node, 1 - _saturation[node]);
        return columns.Area;
    }
}

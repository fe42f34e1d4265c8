namespace InfusionSim.Numerics.Lines;

/// <summary>Factor L·D·Lᵀ of a sparse symmetric matrix whose pattern stays while its numbers change.</summary>
internal sealed class SparseFactor
{
    private readonly EliminationOrder _order;
    private readonly double[] _pivot;
    private readonly double[] _entries;
    private readonly int[] _start;
    private readonly int[] _placeOf;
    private readonly int[] _updates;

    /// <summary>Finds the order of elimination and where numbers will stand.</summary>
    /// <param name="count">Number of unknowns.</param>
    /// <param name="joints">Pairs of unknowns that may be coupled, each pair at most once.</param>
    public SparseFactor(int count, IReadOnlyList<(int First, int Second)> joints)
    {
        Count = count;
        _order = new EliminationOrder(count, joints);
        _pivot = new double[count];
        _start = new int[count + 1];
        for (int node = 0; node < count; node++) _start[node + 1] = _start[node] + _order.Later[node].Length;
        _entries = new double[_start[count]];
        Dictionary<(int, int), int> places = [];
        for (int node = 0; node < count; node++)
            for (int slot = 0; slot < _order.Later[node].Length; slot++) places[(node, _order.Later[node][slot])] = _start[node] + slot;
        _placeOf = [.. joints.Select(joint => PlaceOf(joint.First, joint.Second))];

        // Where each pair of entries of an eliminated node goes, in the order Factorise meets them.
        List<int> updates = [];
        foreach (int node in _order.Nodes)
        {
            int[] later = _order.Later[node];
            for (int a = 0; a < later.Length; a++)
                for (int b = a + 1; b < later.Length; b++) updates.Add(PlaceOf(later[a], later[b]));
        }

        _updates = [.. updates];

        int PlaceOf(int first, int second) => places.TryGetValue((first, second), out int place) ? place : places[(second, first)];
    }

    /// <summary>Number of unknowns [-].</summary>
    public int Count { get; }

    /// <summary>Sets all numbers to zero.</summary>
    public void Clear()
    {
        Array.Clear(_pivot);
        Array.Clear(_entries);
    }

    /// <summary>Sets a number of the diagonal.</summary>
    /// <param name="unknown">Which.</param>
    /// <param name="value">The number; 0 keeps the unknown at 0.</param>
    public void SetDiagonal(int unknown, double value) => _pivot[unknown] = value;

    /// <summary>Adds a coupling.</summary>
    /// <param name="joint">Index of the pair in the list given at first.</param>
    /// <param name="conductance">Coupling with the sign of a conductance.</param>
    public void Couple(int joint, double conductance) => _entries[_placeOf[joint]] -= conductance;

    /// <summary>Factorises the numbers set.</summary>
    public void Factorise()
    {
        int update = 0;
        foreach (int node in _order.Nodes)
        {
            double inverse = _pivot[node] > 0 ? 1 / _pivot[node] : 0;
            int[] later = _order.Later[node];
            int start = _start[node];
            for (int a = 0; a < later.Length; a++)
            {
                double scaled = _entries[start + a] * inverse;
                _pivot[later[a]] -= _entries[start + a] * scaled;
                for (int b = a + 1; b < later.Length; b++) _entries[_updates[update++]] -= scaled * _entries[start + b];
            }

            for (int a = 0; a < later.Length; a++) _entries[start + a] *= inverse;
            _pivot[node] = inverse;
        }
    }

    /// <summary>Solves in place.</summary>
    /// <param name="values">Right-hand side, replaced by the solution.</param>
    public void Solve(Span<double> values)
    {
        foreach (int node in _order.Nodes)
        {
            double value = values[node];
            if (value == 0) continue;
            int[] later = _order.Later[node];
            int start = _start[node];
            for (int a = 0; a < later.Length; a++) values[later[a]] -= _entries[start + a] * value;
        }

        for (int step = Count - 1; step >= 0; step--)
        {
            int node = _order.Nodes[step];
            int[] later = _order.Later[node];
            int start = _start[node];
            double value = values[node] * _pivot[node];
            for (int a = 0; a < later.Length; a++) value -= _entries[start + a] * values[later[a]];
            values[node] = value;
        }
    }
}

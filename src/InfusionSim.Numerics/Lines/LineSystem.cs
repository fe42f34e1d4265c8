using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Lines;

/// <summary>The line nodes of an operator by themselves: their couplings to one another, solved directly.</summary>
/// <remarks>A line conducts a hundred thousand times better than the cloth beside it, so it is balanced as a whole, on every grid of the hierarchy. Factor L·D·Lᵀ in double precision.</remarks>
internal sealed class LineSystem
{
    private readonly EliminationOrder _order;
    private readonly double[] _fullDiagonal;
    private readonly (int First, int Second, double Conductance)[] _joints;
    private readonly double[] _inversePivot;
    private readonly double[][] _factor;
    private readonly Dictionary<(int, int), (int Node, int Slot)> _places = [];

    /// <summary>Takes the line nodes out of an operator, all of them dry.</summary>
    /// <param name="matrix">The operator.</param>
    /// <param name="scale">What conductances are divided by.</param>
    public LineSystem(LatticeOperator matrix, double scale)
    {
        Count = matrix.LineNodes;
        int cells = matrix.CellCount;
        _fullDiagonal = [.. Enumerable.Range(cells, Count).Select(node => matrix.DiagonalOf(node) / scale)];
        Anchor = [.. Enumerable.Range(cells, Count).Select(node => matrix.Anchor[node] / scale)];
        Links = [.. matrix.Links.Where(link => Math.Min(link.First, link.Second) < cells)
            .Select(link => new NodeLink(Math.Min(link.First, link.Second), Math.Max(link.First, link.Second) - cells, link.Conductance / scale))];
        _joints = [.. matrix.Links.Where(link => Math.Min(link.First, link.Second) >= cells)
            .GroupBy(link => (First: Math.Min(link.First, link.Second) - cells, Second: Math.Max(link.First, link.Second) - cells))
            .Select(group => (group.Key.First, group.Key.Second, group.Sum(link => link.Conductance) / scale))];
        IsWet = new bool[Count];
        _order = new EliminationOrder(Count, [.. _joints.Select(static joint => (joint.First, joint.Second))]);
        _inversePivot = new double[Count];
        _factor = [.. _order.Later.Select(static later => new double[later.Length])];
        for (int node = 0; node < Count; node++)
            for (int slot = 0; slot < _order.Later[node].Length; slot++) _places[(node, _order.Later[node][slot])] = (node, slot);
    }

    /// <summary>Number of line nodes [-].</summary>
    public int Count { get; }

    /// <summary>Scaled conductance of each node to fixed pressures.</summary>
    public double[] Anchor { get; }

    /// <summary>Scaled conductances between cells (First, index of the cell) and line nodes (Second, counted from the first line node).</summary>
    public IReadOnlyList<NodeLink> Links { get; }

    /// <summary>Scaled conductances between line nodes, each pair once.</summary>
    public IReadOnlyList<(int First, int Second, double Conductance)> Joints => _joints;

    /// <summary>Whether each node is wet; after a change <see cref="Factorise"/> is due.</summary>
    public bool[] IsWet { get; }

    /// <summary>Factorises what is wet; a dry node holds the value 0.</summary>
    public void Factorise()
    {
        for (int node = 0; node < Count; node++)
        {
            _inversePivot[node] = IsWet[node] ? _fullDiagonal[node] : 1;
            Array.Clear(_factor[node]);
        }

        foreach ((int first, int second, double conductance) in _joints)
            if (IsWet[first] && IsWet[second]) PlaceOf(first, second) = -conductance;
        foreach (int node in _order.Nodes)
        {
            double pivot = _inversePivot[node];
            double inverse = pivot > 0 ? 1 / pivot : 0;
            double[] factor = _factor[node];
            int[] later = _order.Later[node];
            for (int a = 0; a < later.Length; a++)
            {
                if (factor[a] == 0) continue;
                _inversePivot[later[a]] -= factor[a] * factor[a] * inverse;
                for (int b = a + 1; b < later.Length; b++)
                    if (factor[b] != 0) PlaceOf(later[a], later[b]) -= factor[a] * factor[b] * inverse;
            }

            for (int a = 0; a < later.Length; a++) factor[a] *= inverse;
            _inversePivot[node] = inverse;
        }
    }

    /// <summary>Solves for the values that balance a load, in place.</summary>
    /// <param name="values">The load of each node, replaced by its value; 0 where it is dry.</param>
    public void Solve(Span<double> values)
    {
        for (int node = 0; node < Count; node++) if (!IsWet[node]) values[node] = 0;
        foreach (int node in _order.Nodes)
        {
            int[] later = _order.Later[node];
            for (int a = 0; a < later.Length; a++) values[later[a]] -= _factor[node][a] * values[node];
        }

        for (int step = Count - 1; step >= 0; step--)
        {
            int node = _order.Nodes[step];
            int[] later = _order.Later[node];
            double value = values[node] * _inversePivot[node];
            for (int a = 0; a < later.Length; a++) value -= _factor[node][a] * values[later[a]];
            values[node] = value;
        }
    }

    private ref double PlaceOf(int first, int second)
    {
        if (!_places.TryGetValue((first, second), out (int Node, int Slot) place)) place = _places[(second, first)];
        return ref _factor[place.Node][place.Slot];
    }
}

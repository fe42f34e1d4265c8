using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Numerics.Lines;

/// <summary>The line nodes of an operator by themselves: their couplings to one another, solved directly.</summary>
/// <remarks>A line may conduct a hundred thousand times better than the cloth beside it, so it is balanced as a whole, on every grid of the
/// hierarchy.</remarks>
internal sealed class LineSystem
{
    private readonly SparseFactor _factor;
    private readonly double[] _fullDiagonal;
    private readonly (int First, int Second, double Conductance)[] _joints;

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
            .GroupBy(link => (Cell: Math.Min(link.First, link.Second), Node: Math.Max(link.First, link.Second) - cells))
            .Select(group => new NodeLink(group.Key.Cell, group.Key.Node, group.Sum(static link => link.Conductance) / scale))];
        _joints = [.. matrix.Links.Where(link => Math.Min(link.First, link.Second) >= cells)
            .GroupBy(link => (First: Math.Min(link.First, link.Second) - cells, Second: Math.Max(link.First, link.Second) - cells))
            .Select(group => (group.Key.First, group.Key.Second, group.Sum(link => link.Conductance) / scale))];
        IsWet = new bool[Count];
        _factor = new SparseFactor(Count, [.. _joints.Select(static joint => (joint.First, joint.Second))]);
    }

    /// <summary>Number of line nodes [-].</summary>
    public int Count { get; }

    /// <summary>Scaled conductance of each node to fixed pressures.</summary>
    public double[] Anchor { get; }

    /// <summary>Scaled conductances between cells (First, index of the cell) and line nodes (Second, counted from the first line node), each pair
    /// once.</summary>
    public IReadOnlyList<NodeLink> Links { get; }

    /// <summary>Scaled conductances between line nodes, each pair once.</summary>
    public IReadOnlyList<(int First, int Second, double Conductance)> Joints => _joints;

    /// <summary>Whether each node is wet; after a change <see cref="Factorise"/> is due.</summary>
    public bool[] IsWet { get; }

    /// <summary>Factorises what is wet; a dry node holds the value 0.</summary>
    public void Factorise()
    {
        _factor.Clear();
        WriteTo(_factor);
        _factor.Factorise();
    }

    /// <summary>Sets the numbers of the line nodes in a factor whose first unknowns and first joints they are.</summary>
    /// <param name="factor">The factor, cleared.</param>
    public void WriteTo(SparseFactor factor)
    {
        for (int node = 0; node < Count; node++) if (IsWet[node]) factor.SetDiagonal(node, _fullDiagonal[node]);
        for (int joint = 0; joint < _joints.Length; joint++)
            if (IsWet[_joints[joint].First] && IsWet[_joints[joint].Second]) factor.Couple(joint, _joints[joint].Conductance);
    }

    /// <summary>Solves for the values that balance a load, in place.</summary>
    /// <param name="values">The load of each node, replaced by its value; 0 where it is dry.</param>
    public void Solve(Span<double> values)
    {
        for (int node = 0; node < Count; node++) if (!IsWet[node]) values[node] = 0;
        _factor.Solve(values);
    }
}

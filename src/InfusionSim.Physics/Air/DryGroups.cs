namespace InfusionSim.Physics.Air;

/// <summary>Groups of dry cells that merge as cells are added: disjoint sets, each with its members and whether a vent is among them.</summary>
internal sealed class DryGroups
{
    private readonly int[] _parent;
    private readonly List<int>?[] _members;
    private readonly bool[] _vented;

    /// <summary>Makes groups for a number of cells, none added yet.</summary>
    /// <param name="cells">Number of cells.</param>
    public DryGroups(int cells)
    {
        _parent = new int[cells];
        Array.Fill(_parent, -1);
        _members = new List<int>?[cells];
        _vented = new bool[cells];
    }

    /// <summary>Group of a cell; −1 when it has not been added.</summary>
    /// <param name="cell">The cell.</param>
    public int Of(int cell)
    {
        if (_parent[cell] < 0) return -1;
        while (_parent[cell] != cell)
        {
            _parent[cell] = _parent[_parent[cell]];
            cell = _parent[cell];
        }

        return cell;
    }

    /// <summary>Whether a vent is among a group's cells.</summary>
    /// <param name="group">The group.</param>
    public bool IsVented(int group) => _vented[group];

    /// <summary>Cells of a group.</summary>
    /// <param name="group">The group.</param>
    public IReadOnlyList<int> Members(int group) => _members[group]!;

    /// <summary>Adds a cell and merges it with the groups beside it.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="isVent">Whether a vent touches it.</param>
    /// <param name="beside">Groups beside it, each named once.</param>
    public void Add(int cell, bool isVent, IReadOnlyList<int> beside)
    {
        int root = cell;
        foreach (int group in beside)
            if (root == cell || _members[group]!.Count > _members[root]!.Count) root = group;
        if (root == cell) _members[cell] = [];
        _parent[cell] = root;
        _members[root]!.Add(cell);
        _vented[root] |= isVent;
        foreach (int group in beside)
        {
            if (group == root) continue;
            _parent[group] = root;
            _vented[root] |= _vented[group];
            _members[root]!.AddRange(_members[group]!);
            _members[group] = null;
        }
    }

    /// <summary>The groups there are.</summary>
    public IEnumerable<int> Roots() => Enumerable.Range(0, _parent.Length).Where(cell => _parent[cell] == cell);
}

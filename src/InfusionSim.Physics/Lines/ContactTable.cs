namespace InfusionSim.Physics.Lines;

/// <summary>Gathers where one line touches cells, each cell of each layer once.</summary>
internal sealed class ContactTable
{
    private readonly SortedDictionary<int, Entry> conductances;
    private readonly int first;

    /// <summary>Makes an empty table.</summary>
    public ContactTable()
        : this([], 0)
    {
    }

    private ContactTable(SortedDictionary<int, Entry> conductances, int first)
    {
        this.conductances = conductances;
        this.first = first;
    }

    /// <summary>Whether it touches no cell.</summary>
    public bool IsEmpty => conductances.Count == 0;

    /// <summary>The same table, entered by the cells of one layer.</summary>
    /// <param name="firstNode">Number of the layer's first node [-].</param>
    public ContactTable From(int firstNode) => firstNode == first ? this : new(conductances, firstNode);

    /// <summary>Adds a line that lies where the volume of the cell ends.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="conductance">Conductance between the two [m³].</param>
    /// <param name="isBeside">Whether the line passes through the cell or beside it.</param>
    public void AddBeyond(int cell, double conductance, bool isBeside = true) => Add(cell, new(conductance, 0, isBeside, true));

    /// <summary>Adds a line that lies under the middle of the cell.</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="conductance">Conductance between the two [m³].</param>
    public void AddUnder(int cell, double conductance) => Add(cell, new(0, conductance, true, false));

    /// <summary>The contacts; a cell touched both ways counts as the way that conducts more.</summary>
    /// <param name="name">Name of the feed or vent.</param>
    public LineContact ToContact(string name)
    {
        // A stretch so short that it crosses slanted ways alone lies beside all their cells.
        bool isBesideNone = !conductances.Values.Any(entry => entry.IsBeside);
        return new(name, [.. conductances.Select(pair => pair.Value.ToContact(pair.Key) with { IsBeside = isBesideNone || pair.Value.IsBeside })]);
    }

    private void Add(int cell, Entry entry) =>
        conductances[first + cell] = conductances.TryGetValue(first + cell, out Entry before) ? before.And(entry) : entry;

    private readonly record struct Entry(double Beyond, double Under, bool IsBeside, bool EndsVolume)
    {
        public Entry And(Entry other) => new(Beyond + other.Beyond, Under + other.Under, IsBeside || other.IsBeside, EndsVolume || other.EndsVolume);

        public CellContact ToContact(int cell) => new(cell, Beyond + Under, EndsVolume && Beyond >= Under);
    }
}

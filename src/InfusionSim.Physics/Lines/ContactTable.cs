namespace InfusionSim.Physics.Lines;

/// <summary>Gathers where one line touches cells, each cell of each layer once.</summary>
internal sealed class ContactTable
{
    private readonly SortedDictionary<int, (double Beyond, double Under)> conductances;
    private readonly int first;

    /// <summary>Makes an empty table.</summary>
    public ContactTable()
        : this([], 0)
    {
    }

    private ContactTable(SortedDictionary<int, (double Beyond, double Under)> conductances, int first)
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
    public void AddBeyond(int cell, double conductance) => Add(cell, conductance, 0);

    /// <summary>Adds a line that lies under the middle of the cell.</summary>
    public void AddUnder(int cell, double conductance) => Add(cell, 0, conductance);

    /// <summary>The contacts; a cell touched both ways counts as the way that conducts more.</summary>
    /// <param name="name">Name of the feed or vent.</param>
    public LineContact ToContact(string name) => new(
        name,
        [.. conductances.Select(entry => new CellContact(entry.Key, entry.Value.Beyond + entry.Value.Under, entry.Value.Beyond > entry.Value.Under))]);

    private void Add(int cell, double beyond, double under)
    {
        (double Beyond, double Under) before = conductances.GetValueOrDefault(first + cell);
        conductances[first + cell] = (before.Beyond + beyond, before.Under + under);
    }
}

namespace InfusionSim.Physics.Lines;

/// <summary>Gathers where one line touches cells, each cell once.</summary>
internal sealed class ContactTable
{
    private readonly SortedDictionary<int, (double Beyond, double Under)> conductances = [];

    /// <summary>Whether it touches no cell.</summary>
    public bool IsEmpty => conductances.Count == 0;

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
        (double Beyond, double Under) before = conductances.GetValueOrDefault(cell);
        conductances[cell] = (before.Beyond + beyond, before.Under + under);
    }
}

namespace InfusionSim.Physics.Lines;

/// <summary>Gathers where one line touches cells, each cell once.</summary>
internal sealed class ContactTable
{
    private readonly SortedDictionary<int, (double OnOutline, double Inside)> conductances = [];

    public void AddOnOutline(int cell, double conductance) => Add(cell, conductance, 0);

    public void AddInside(int cell, double conductance) => Add(cell, 0, conductance);

    /// <summary>The contacts; a cell touched both ways counts as the way that conducts more.</summary>
    /// <param name="name">Name of the feed or vent.</param>
    public LineContact ToContact(string name) => new(
        name,
        [.. conductances.Select(entry => new CellContact(entry.Key, entry.Value.OnOutline + entry.Value.Inside, entry.Value.OnOutline > entry.Value.Inside))]);

    private void Add(int cell, double onOutline, double inside)
    {
        (double OnOutline, double Inside) before = conductances.GetValueOrDefault(cell);
        conductances[cell] = (before.OnOutline + onOutline, before.Inside + inside);
    }
}

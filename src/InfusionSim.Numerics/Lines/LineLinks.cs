using InfusionSim.Numerics.Multigrid;

namespace InfusionSim.Numerics.Lines;

/// <summary>Flow between line nodes, and between them and the cells they are linked to, in double precision.</summary>
internal sealed unsafe class LineLinks
{
    private readonly LineSystem? _system;
    private readonly (int At, int Node, double Conductance)[] _links;

    /// <summary>Lays the links out.</summary>
    /// <param name="system">Line nodes; null for none.</param>
    /// <param name="layout">Where the cells lie.</param>
    public LineLinks(LineSystem? system, PaddedLayout layout)
    {
        _system = system;
        _links = system is null ? [] : [.. system.Links.Select(link => (AtOf(layout, link.First), link.Second, link.Conductance))];
    }

    /// <summary>Number of line nodes [-].</summary>
    public int Count => _system?.Count ?? 0;

    /// <summary>Where the linked cells lie, each named once per link.</summary>
    public IEnumerable<int> LinkedCells => _links.Select(static link => link.At);

    /// <summary>Writes what flows into the linked cells from line nodes; other cells are left as they are.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="inflow">Where the inflow goes.</param>
    public void WriteInflow(NodeField x, Field<double> inflow)
    {
        foreach ((int at, _, _) in _links) inflow.Origin[at] = 0;
        foreach ((int at, int node, double conductance) in _links) inflow.Origin[at] += conductance * (x.Lines[node] - x.Cells.Origin[at] + x.Fine[node]);
    }

    /// <summary>Writes a load of the line nodes less what flows off to fixed pressures, without rounding the difference of the two.</summary>
    /// <param name="load">What they are offered.</param>
    /// <param name="x">Unknowns.</param>
    /// <param name="supply">Where it goes.</param>
    public void WriteSupply(NodeField load, NodeField x, Span<double> supply)
    {
        for (int node = 0; node < supply.Length; node++)
        {
            double anchor = _system!.Anchor[node], off = anchor * x.Lines[node], rounded = Math.FusedMultiplyAdd(anchor, x.Lines[node], -off);
            supply[node] = load.Lines[node] - off + (load.Fine[node] - rounded - anchor * x.Fine[node]);
        }
    }

    /// <summary>Writes what the line nodes receive: a load less what flows off to fixed pressures and other nodes.</summary>
    /// <param name="load">What they are offered.</param>
    /// <param name="x">Unknowns.</param>
    /// <param name="receipt">Where it goes.</param>
    public void WriteReceipt(NodeField load, NodeField x, Span<double> receipt)
    {
        if (_system is null) return;
        WriteSupply(load, x, receipt);
        foreach ((int first, int second, double conductance) in _system.Joints)
        {
            double flow = conductance * (x.Lines[first] - x.Lines[second] + (x.Fine[first] - x.Fine[second]));
            receipt[first] -= flow;
            receipt[second] += flow;
        }

        foreach ((int at, int node, double conductance) in _links) receipt[node] -= conductance * (x.Lines[node] - x.Cells.Origin[at] + x.Fine[node]);
    }

    /// <summary>Adds the flow of links to the image of the wet cells and writes that of the wet line nodes.</summary>
    /// <param name="vector">What the operator is applied to; 0 in dry nodes.</param>
    /// <param name="image">The image.</param>
    /// <param name="diagonal">Above 0 in wet cells.</param>
    /// <returns>What that adds to vector times image.</returns>
    public double Apply(NodeField vector, NodeField image, Field<float> diagonal)
    {
        if (_system is null) return 0;
        double total = 0;
        for (int node = 0; node < image.Lines.Length; node++) image.Lines[node] = _system.Anchor[node] * vector.Lines[node];
        foreach ((int first, int second, double conductance) in _system.Joints)
        {
            double flow = conductance * (vector.Lines[first] - vector.Lines[second]);
            image.Lines[first] += flow;
            image.Lines[second] -= flow;
        }

        foreach ((int at, int node, double conductance) in _links)
        {
            double flow = conductance * (vector.Cells.Origin[at] - vector.Lines[node]);
            image.Lines[node] -= flow;
            if (diagonal.Origin[at] <= 0) continue;
            image.Cells.Origin[at] += flow;
            total += vector.Cells.Origin[at] * flow;
        }

        for (int node = 0; node < image.Lines.Length; node++)
        {
            if (!_system.IsWet[node]) image.Lines[node] = 0;
            total += vector.Lines[node] * image.Lines[node];
        }

        return total;
    }

    private static int AtOf(PaddedLayout layout, int cell) =>
        layout.At(cell % layout.Columns, cell / layout.Columns % layout.Rows, cell / (layout.Columns * layout.Rows));
}

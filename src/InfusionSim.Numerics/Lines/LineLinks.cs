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
        foreach ((int at, int node, double conductance) in _links) inflow.Origin[at] += conductance * (x.Lines[node] - x.Cells.Origin[at]);
    }

    /// <summary>Writes the net outflow of the line nodes.</summary>
    /// <param name="x">Unknowns.</param>
    /// <param name="outflow">Where it goes.</param>
    public void WriteOutflow(NodeField x, Span<double> outflow)
    {
        if (_system is null) return;
        for (int node = 0; node < outflow.Length; node++) outflow[node] = _system.Anchor[node] * x.Lines[node];
        foreach ((int first, int second, double conductance) in _system.Joints)
        {
            double flow = conductance * (x.Lines[first] - x.Lines[second]);
            outflow[first] += flow;
            outflow[second] -= flow;
        }

        foreach ((int at, int node, double conductance) in _links) outflow[node] += conductance * (x.Lines[node] - x.Cells.Origin[at]);
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
        WriteOutflow(vector, image.Lines);
        foreach ((int at, int node, double conductance) in _links)
        {
            if (diagonal.Origin[at] <= 0) continue;
            double flow = conductance * (vector.Cells.Origin[at] - vector.Lines[node]);
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

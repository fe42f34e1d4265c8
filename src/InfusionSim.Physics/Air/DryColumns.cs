using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>Adds up dry area seen from above: each cell of the grid counts with its driest layer of the part.</summary>
/// <param name="problem">The panel as numbers.</param>
internal sealed class DryColumns(FillProblem problem)
{
    private readonly Dictionary<int, double> _shares = [];

    /// <summary>Dry area so far [m²].</summary>
    public double Area { get; private set; }

    /// <summary>The cells, in the order they were added.</summary>
    public List<int> Cells { get; } = [];

    /// <summary>First moment of the dry area about the y axis [m³].</summary>
    public double MomentX { get; private set; }

    /// <summary>First moment of the dry area about the x axis [m³].</summary>
    public double MomentY { get; private set; }

    /// <summary>Adds a node; mesh, peel ply, lines and gaps have no area of their own.</summary>
    /// <param name="node">Index of the node.</param>
    /// <param name="dry">Share of it that is dry [-].</param>
    public void Add(int node, double dry)
    {
        int cell = problem.CellOf(node);
        if (cell < 0 || !problem.StaysInPart(node)) return;
        if (!_shares.TryGetValue(cell, out double before)) Cells.Add(cell);
        if (dry <= before && before > 0) return;
        _shares[cell] = dry;
        double area = (dry - before) * problem.Cells.Area[cell];
        Area += area;
        MomentX += area * problem.Cells.CentroidX[cell];
        MomentY += area * problem.Cells.CentroidY[cell];
    }
}

using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Air;

/// <summary>
/// Where the air of a dry place can go: across the open faces of its layer, into the layers above and below, along lines and gaps it is joined to.
/// </summary>
/// <remarks>Slanted ways are left out: they jump over cells, and air that cannot pass those cannot follow.</remarks>
/// <param name="problem">Conductances between the nodes.</param>
internal sealed class AirWays(FillProblem problem)
{
    private readonly ILookup<int, int> _linked = problem.Operator.Links
        .SelectMany(static link => new[] { (From: link.First, To: link.Second), (From: link.Second, To: link.First) })
        .ToLookup(static pair => pair.From, static pair => pair.To);

    /// <summary>The nodes beside one, each named once.</summary>
    /// <param name="node">Index of the node.</param>
    public IEnumerable<int> From(int node)
    {
        LatticeOperator ways = problem.Operator;
        if (node < ways.CellCount)
        {
            int columns = ways.Columns, layer = ways.CellsInLayer, cell = node % layer;
            if (ways.East[node] > 0) yield return node + 1;
            if (cell % columns > 0 && ways.East[node - 1] > 0) yield return node - 1;
            if (ways.North[node] > 0) yield return node + columns;
            if (cell >= columns && ways.North[node - columns] > 0) yield return node - columns;
            if (ways.Layers > 1)
            {
                if (ways.Above[node] > 0) yield return node + layer;
                if (node >= layer && ways.Above[node - layer] > 0) yield return node - layer;
            }
        }

        foreach (int linked in _linked[node]) yield return linked;
    }
}

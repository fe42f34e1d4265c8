using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Layers;

namespace InfusionSim.Physics.Quality;

/// <summary>
/// Ways through the thickness between sub-layers of one laminate; to a mesh, a peel ply or a core there is none, for there the cloth changes.
/// </summary>
internal sealed class ThicknessWays
{
    private readonly FillProblem problem;
    private readonly int step;
    private readonly double[] thickness = [];

    /// <summary>Makes the ways of a problem.</summary>
    /// <param name="problem">The panel as numbers.</param>
    public ThicknessWays(FillProblem problem)
    {
        this.problem = problem;
        step = problem.Operator.CellsInLayer;
        if (problem.Operator.Layers == 1 || problem.Panel is null || problem.Stack is null) return;
        ClothMap zones = new(problem.Panel.Zones);
        thickness = new double[step];
        for (int cell = 0; cell < step; cell++)
        {
            int zone = problem.Cells.HasCloth(cell) ? zones.ZoneAt(problem.Cells.CentroidOf(cell)) : -1;
            if (zone >= 0) thickness[cell] = zones.Zones[zone].Thickness;
        }
    }

    /// <summary>Node above and the distance to its middle [m]; −1 for none.</summary>
    /// <param name="node">A node of a layer.</param>
    public (int Node, double Distance) Above(int node) => To(node, node + step, node);

    /// <summary>Node below and the distance to its middle [m]; −1 for none.</summary>
    /// <param name="node">A node of a layer.</param>
    public (int Node, double Distance) Below(int node) => To(node, node - step, node - step);

    private (int Node, double Distance) To(int node, int other, int lower)
    {
        double here = thickness.Length == 0 ? 0 : thickness[node % step];
        if (!(here > 0) || other < 0 || other >= problem.Operator.CellCount || !(problem.Operator.Above[lower] > 0)) return (-1, 0);
        Layer one = problem.Stack!.Layers[node / step], next = problem.Stack.Layers[other / step];
        return one.Kind == LayerKind.Laminate && next.Kind == LayerKind.Laminate ? (other, here * (one.ThicknessShare + next.ThicknessShare) / 2) : (-1, 0);
    }
}

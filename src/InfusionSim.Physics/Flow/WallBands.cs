using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Lines;

namespace InfusionSim.Physics.Flow;

/// <summary>Gives turned cloth back what it conducts along a sealed edge where the edge cuts slanted ways.</summary>
/// <remarks>
/// Beside a sealed edge with direction t the pressure falls along g = K⁻¹t/(t·K⁻¹t), which drives 1/(t·K⁻¹t) along the edge and nothing across it. The ways of a cell should
/// then dissipate as much as the cloth it owns, ½ Σ T (d·g)² = area/(t·K⁻¹t) with d from middle to middle; the ways that the edge cuts are missing, others reach
/// beyond it. Each way is multiplied by the mean of what its two cells lack. Far from edges, and in cloth along the squares beside edges along the squares, the factor is 1.
/// It stays between one half and two. Derived; without it a channel loses a part of the order of one over the cells across it.
/// </remarks>
internal static class WallBands
{
    private const double LargestFactor = 2;

    // Below it the edges about a cell have no common direction.
    private const double LeastAgreement = 0.95;

    /// <summary>Corrects the conductances of the cells whose slanted ways end on sealed edges alone.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    /// <param name="exits">Slanted ways that end on an edge.</param>
    /// <param name="fed">Whether a feed or an open vent lies where each of them ends.</param>
    /// <param name="conductances">Conductances between the cells.</param>
    public static void Correct(CutCellGrid cells, ClothMap cloth, IReadOnlyList<WallExit> exits, IReadOnlyList<bool> fed, LatticeOperator conductances)
    {
        Dictionary<int, double> factors = [];
        foreach (IGrouping<int, int> own in Enumerable.Range(0, exits.Count).GroupBy(k => exits[k].Cell))
        {
            if (own.Any(k => fed[k]) || InwardNormal(own.Select(k => exits[k])) is not Point2 normal) continue;
            int zone = cloth.ZoneAt(cells.CentroidOf(own.Key));
            if (zone < 0) continue;
            ClothTensor tensor = cloth[zone];
            double across = tensor.ConductanceAlong(normal.X, normal.Y);
            Point2 fall = new((-tensor.Yy * normal.Y - tensor.Xy * normal.X) / across, (tensor.Xx * normal.X + tensor.Xy * normal.Y) / across);
            double spent = Spent(cells, conductances, own.Key, fall), along = tensor.Tensor.Determinant / across;
            if (spent > 0) factors[own.Key] = Math.Clamp(cells.Area[own.Key] * along / spent, 1 / LargestFactor, LargestFactor);
        }

        foreach (StencilWay way in conductances.Ways)
        {
            int step = way.Up * cells.Grid.Columns + way.Right;
            foreach ((int cell, double factor) in factors)
            {
                if (way.Conductance[cell] > 0) way.Conductance[cell] *= (factor + factors.GetValueOrDefault(cell + step, 1)) / 2;
                int before = cell - step;
                if (before >= 0 && !factors.ContainsKey(before) && LeadsTo(way, before, cell)) way.Conductance[before] *= (factor + 1) / 2;
            }
        }

        bool LeadsTo(StencilWay way, int from, int to) =>
            way.Conductance[from] > 0 && cells.Grid.ColumnOf(from) + way.Right == cells.Grid.ColumnOf(to);
    }

    private static double Spent(CutCellGrid cells, LatticeOperator conductances, int cell, Point2 fall)
    {
        List<NodeNeighbour> neighbours = [];
        conductances.CollectNeighbours(cell, neighbours);
        double sum = 0;
        foreach (NodeNeighbour neighbour in neighbours)
        {
            double difference = (cells.CentroidX[neighbour.Node] - cells.CentroidX[cell]) * fall.X + (cells.CentroidY[neighbour.Node] - cells.CentroidY[cell]) * fall.Y;
            sum += neighbour.Conductance * difference * difference / 2;
        }

        return sum;
    }

    private static Point2? InwardNormal(IEnumerable<WallExit> exits)
    {
        double x = 0, y = 0, count = 0;
        foreach (WallExit exit in exits)
        {
            double length = exit.Wall.Length, nx = -(exit.Wall.To.Y - exit.Wall.From.Y) / length, ny = (exit.Wall.To.X - exit.Wall.From.X) / length;
            double side = nx * (exit.Way.From.X - exit.Way.To.X) + ny * (exit.Way.From.Y - exit.Way.To.Y);
            x += side < 0 ? -nx : nx;
            y += side < 0 ? -ny : ny;
            count++;
        }

        double size = Math.Sqrt(x * x + y * y);
        return size < LeastAgreement * count ? null : new Point2(x / size, y / size);
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Lines;

/// <summary>
/// The slanted ways that the edge of the cloth cuts, each with what it conducts to the edge: where a line feeds along it, they bring resin in as
/// well.
/// </summary>
/// <remarks>
/// Each conducts its weight times the length of the whole way over that up to the edge. A pressure that falls evenly away from a straight fed edge
/// then drives the true flow through it, and none is lost between the first rows of cells (derived).
/// </remarks>
internal static class WallExits
{
    // A way starts at a middle that may lie farther from the edge than that of a whole square: it is followed a little beyond its end.
    private const double Followed = 1.5;

    // A way that grazes an edge does not stand for all of it.
    private const double SmallestSine = 0.2;

    /// <summary>Finds them.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    public static IReadOnlyList<WallExit> Of(CutCellGrid cells, ClothMap cloth)
    {
        if (cloth.SlantedArms.Count == 0) return [];
        List<WallExit> exits = [];
        EdgeFinder edges = new(cells);
        foreach ((int right, int up) in cloth.SlantedArms)
        {
            ArmPath path = new(cells, edges, right, up);
            int step = up * cells.Grid.Columns + right;
            for (int cell = 0; cell < cells.Grid.CellCount; cell++)
            {
                if (!cells.HasCloth(cell)) continue;
                int column = cells.Grid.ColumnOf(cell) - right, row = cells.Grid.RowOf(cell) - up;
                bool hasBefore = column >= 0 && column < cells.Grid.Columns && row >= 0 && path.LeadsToCloth(cell - step, out _);
                if (!path.LeadsToCloth(cell, out int next) || !IsOpen(cell, next)) Enter(cell, right, up);
                if (!hasBefore || !IsOpen(cell - step, cell)) Enter(cell, -right, -up);
            }

            bool IsOpen(int cell, int next) => path.IsOpen(cell) || !edges.Meets(cells.CentroidOf(cell), cells.CentroidOf(next));
        }

        return exits;

        void Enter(int cell, int right, int up)
        {
            double size = cells.Grid.CellSize, length = Math.Sqrt(right * right + up * up) * size;
            Point2 from = cells.CentroidOf(cell), to = new(from.X + Followed * right * size, from.Y + Followed * up * size);
            IReadOnlyList<EdgeHit> hits = edges.First(from, to);
            foreach (EdgeHit hit in hits)
            {
                Segment way = new(from, new Segment(from, to).At(Math.Max(hit.Share, LatticeEdge.LeastShare)));
                double weight = up > 0 || (up == 0 && right > 0) ? cloth.WeightAlong(way.From, way.To, right, up) : cloth.WeightAlong(way.From, way.To, -right, -up);

                // In a corner each of the edges takes its share.
                if (weight > 0) exits.Add(new(cell, weight * length / way.Length / hits.Count, way, WallAt(hit, way, size * size / length), Math.Max(Math.Abs(right), Math.Abs(up)) == 1));
            }
        }
    }

    // The stretch of the edge that the rectangle about the way meets, as far as it lies on one edge.
    private static Segment WallAt(EdgeHit hit, Segment way, double width)
    {
        Segment edge = new(hit.Start, hit.End);
        double across = Math.Abs((edge.To.X - edge.From.X) * (way.To.Y - way.From.Y) - (edge.To.Y - edge.From.Y) * (way.To.X - way.From.X)) / (edge.Length * way.Length);
        double half = Math.Min(width / Math.Max(across, SmallestSine), edge.Length) / 2 / edge.Length, at = edge.From.DistanceTo(way.To) / edge.Length;
        return new(edge.At(Math.Clamp(at - half, 0, 1 - half)), edge.At(Math.Clamp(at + half, half, 1)));
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Flow;

namespace InfusionSim.Physics.Lines;

/// <summary>The slanted ways that the edge of the cloth cuts, each with what it conducts to the edge: where a line feeds along it, they bring resin in as well.</summary>
/// <remarks>
/// Each conducts its weight times the length of the whole way over that up to the edge. A pressure that falls evenly away from a straight fed edge
/// then drives the true flow through it, and none is lost between the first rows of cells (derived).
/// </remarks>
internal static class WallExits
{
    // A way starts at a middle that may lie farther from the edge than that of a whole square: it is followed a little beyond its end.
    private const double Followed = 1.5;

    // Length of the stretch that stands for the place on the edge, in squares.
    private const double WallLength = 1e-3;

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

            bool IsOpen(int cell, int next) => path.IsOpen(cell) || edges.First(cells.CentroidOf(cell), cells.CentroidOf(next)) is null;
        }

        return exits;

        void Enter(int cell, int right, int up)
        {
            double size = cells.Grid.CellSize, length = Math.Sqrt(right * right + up * up) * size;
            Point2 from = cells.CentroidOf(cell), to = new(from.X + Followed * right * size, from.Y + Followed * up * size);
            if (edges.First(from, to) is not EdgeHit hit) return;
            Segment way = new(from, new Segment(from, to).At(Math.Max(hit.Share, LatticeEdge.LeastShare)));
            double weight = up > 0 || (up == 0 && right > 0) ? cloth.WeightAlong(way.From, way.To, right, up) : cloth.WeightAlong(way.From, way.To, -right, -up);
            if (!(weight > 0)) return;
            double edge = hit.Start.DistanceTo(hit.End), x = (hit.End.X - hit.Start.X) / edge, y = (hit.End.Y - hit.Start.Y) / edge, half = WallLength * size / 2;
            Segment wall = new(new(way.To.X - half * x, way.To.Y - half * y), new(way.To.X + half * x, way.To.Y + half * y));
            exits.Add(new(cell, weight * length / way.Length, way, wall, Math.Max(Math.Abs(right), Math.Abs(up)) == 1));
        }
    }
}

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>Finds the cell that owns the place one points at; in a square that an edge cuts in two, the one on the right side of the edge.</summary>
public sealed class CellFinder
{
    // A place closer to a grid line or an edge than this share of a square counts as on it and so belongs to the cloth.
    private const double OnLine = 1e-9;
    private readonly CutCellGrid cells;
    private readonly ILookup<int, CellPart> partsOf;

    /// <summary>Indexes the parts of the cut squares.</summary>
    /// <param name="cells">The cut cells.</param>
    public CellFinder(CutCellGrid cells)
    {
        ArgumentNullException.ThrowIfNull(cells);
        this.cells = cells;
        partsOf = cells.CutParts.ToLookup(p => p.Square);
    }

    /// <summary>Cell that owns the cloth at a place; −1 outside the region. The edge belongs to the region.</summary>
    /// <param name="place">The place [m].</param>
    public int OwnerAt(Point2 place)
    {
        UniformGrid grid = cells.Grid;
        double u = (place.X - grid.Origin.X) / grid.CellSize, v = (place.Y - grid.Origin.Y) / grid.CellSize;
        if (!(u >= -OnLine && v >= -OnLine && u <= grid.Columns + OnLine && v <= grid.Rows + OnLine)) return -1;
        int found = -1;
        for (double row = Math.Floor(v + OnLine); row >= Math.Floor(v - OnLine); row--)
        {
            for (double column = Math.Floor(u + OnLine); column >= Math.Floor(u - OnLine); column--)
            {
                if (column < 0 || row < 0 || column >= grid.Columns || row >= grid.Rows) continue;
                int square = grid.IndexOf((int)column, (int)row);
                if (!partsOf.Contains(square))
                {
                    if (cells.OwnerOf[square] >= 0) return cells.OwnerOf[square];
                    continue;
                }

                foreach (CellPart part in partsOf[square])
                {
                    if (Contains(part.Border, place) && !part.Holes.Any(hole => Contains(hole, place))) return part.Owner;
                    if (found < 0 && part.Holes.Prepend(part.Border).Any(border => IsOnEdge(border, place))) found = part.Owner;
                }
            }
        }

        return found;
    }

    private static bool Contains(Ring ring, Point2 place)
    {
        bool inside = false;
        for (int k = 0, j = ring.Corners.Count - 1; k < ring.Corners.Count; j = k++)
        {
            Point2 a = ring.Corners[k], b = ring.Corners[j];
            if (a.Y > place.Y != b.Y > place.Y && place.X < a.X + (place.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)) inside = !inside;
        }

        return inside;
    }

    private bool IsOnEdge(Ring ring, Point2 place)
    {
        double reach = OnLine * cells.Grid.CellSize;
        for (int k = 0; k < ring.Corners.Count; k++)
        {
            Point2 a = ring.Corners[k], b = ring.Corners[(k + 1) % ring.Corners.Count];
            double runX = b.X - a.X, runY = b.Y - a.Y, square = runX * runX + runY * runY;
            double along = square > 0 ? Math.Clamp(((place.X - a.X) * runX + (place.Y - a.Y) * runY) / square, 0, 1) : 0;
            if (place.DistanceTo(new Point2(a.X + along * runX, a.Y + along * runY)) <= reach) return true;
        }

        return false;
    }
}

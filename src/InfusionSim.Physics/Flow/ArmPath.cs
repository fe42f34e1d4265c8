using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Flow;

/// <summary>The squares between a cell and the one at an offset from it: tells quickly whether an edge can be in the way.</summary>
internal sealed class ArmPath
{
    // What the area of a whole square is off by is rounding.
    private const double Rounding = 1e-9;

    private readonly CutCellGrid cells;
    private readonly EdgeFinder edges;
    private readonly int right, up;
    private readonly int[] steps;

    /// <summary>Lists the squares that the straight line from middle to middle passes through or touches.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="edges">Their edges.</param>
    /// <param name="right">Columns to the right that the offset leads.</param>
    /// <param name="up">Rows above that it leads, at least 0.</param>
    public ArmPath(CutCellGrid cells, EdgeFinder edges, int right, int up)
    {
        this.cells = cells;
        this.edges = edges;
        this.right = right;
        this.up = up;
        List<int> passed = [];
        int from = Math.Min(0, right), to = Math.Max(0, right);
        for (int row = 0; row <= up; row++)
        {
            for (int column = from; column <= to; column++)
            {
                // A square meets a line through the origin where its middle is no farther than half its extent across it.
                if (2 * Math.Abs(column * up - row * right) <= Math.Abs(right) + up) passed.Add(row * cells.Grid.Columns + column);
            }
        }

        steps = [.. passed];
    }

    /// <summary>Whether the cell and the one at the offset both own cloth.</summary>
    /// <param name="cell">Index of the cell.</param>
    /// <param name="next">Index of the other.</param>
    public bool LeadsToCloth(int cell, out int next)
    {
        int column = cells.Grid.ColumnOf(cell) + right, row = cells.Grid.RowOf(cell) + up;
        next = cell + up * cells.Grid.Columns + right;
        return column >= 0 && column < cells.Grid.Columns && row < cells.Grid.Rows && cells.HasCloth(cell) && cells.HasCloth(next);
    }

    /// <summary>Whether all squares on the way are whole, far from every edge, and the middles of cells are those of squares. Ask only where <see cref="LeadsToCloth"/>.</summary>
    /// <param name="cell">Index of the cell.</param>
    public bool IsOpen(int cell)
    {
        double square = cells.Grid.CellSize * cells.Grid.CellSize;
        foreach (int step in steps)
        {
            int passed = cell + step;
            if (edges.HasEdge(passed) || !(Math.Abs(cells.Area[passed] - square) <= Rounding * square)) return false;
        }

        return true;
    }

    /// <summary>The zone that all squares on the way lie in; −1 where they lie in several, or one of them does.</summary>
    /// <param name="cell">Index of the cell.</param>
    /// <param name="zones">Squares that lie in one zone alone.</param>
    public int OnlyZone(int cell, CellZones zones)
    {
        int zone = zones.OnlyZoneOf(cell);
        foreach (int step in steps)
        {
            if (zones.OnlyZoneOf(cell + step) != zone) return -1;
        }

        return zone;
    }
}

namespace InfusionSim.Numerics.Lattice;

/// <summary>Cells of a lattice that lie in a disc: the squares that stand for a fitting.</summary>
/// <param name="OffsetX">How far the centre lies right of the middle of the reference cell, in half cells [-]: 0 or 1.</param>
/// <param name="OffsetY">How far the centre lies above the middle of the reference cell, in half cells [-]: 0 or 1.</param>
/// <param name="FourfoldRadiusSquared">Square of the disc's radius in half cells, rounded to no loss: (2 columns − OffsetX)² + (2 rows − OffsetY)² of its outermost cells [-].</param>
public readonly record struct LatticeCluster(int OffsetX, int OffsetY, int FourfoldRadiusSquared)
{
    /// <summary>Radius to the middle of the outermost cells, in cells [-].</summary>
    public double Radius => Math.Sqrt(FourfoldRadiusSquared) / 2;

    /// <summary>The cells, row by row.</summary>
    public IReadOnlyList<LatticeCell> Cells()
    {
        var cells = new List<LatticeCell>();
        int reach = (int)Radius + 1;
        for (int row = -reach; row <= reach + 1; row++)
        {
            for (int column = -reach; column <= reach + 1; column++)
            {
                if (DistanceSquared(column, row) <= FourfoldRadiusSquared) cells.Add(new(column, row));
            }
        }

        return cells;
    }

    /// <summary>Clusters about one centre, smallest first, without end: one cell, plus of 5, 3×3, disc of 13 and so on about the middle of a cell; 2×2, 12, 4×4 about a corner; 2×1, 2×3 about the middle of a face.</summary>
    /// <param name="offsetX">Centre right of the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    /// <param name="offsetY">Centre above the middle of the reference cell, in half cells [-]: 0 or 1.</param>
    public static IEnumerable<LatticeCluster> About(int offsetX, int offsetY)
    {
        for (int square = 0; ; square++)
        {
            if (IsReached(square, offsetX, offsetY)) yield return new(offsetX, offsetY, square);
        }
    }

    private static bool IsReached(int square, int offsetX, int offsetY)
    {
        for (int x = offsetX; x * x <= square; x += 2)
        {
            int rest = square - x * x, y = (int)Math.Round(Math.Sqrt(rest));
            if (y * y == rest && y % 2 == offsetY) return true;
        }

        return false;
    }

    private int DistanceSquared(int column, int row) =>
        (2 * column - OffsetX) * (2 * column - OffsetX) + (2 * row - OffsetY) * (2 * row - OffsetY);
}

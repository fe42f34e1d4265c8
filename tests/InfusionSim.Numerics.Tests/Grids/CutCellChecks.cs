using InfusionSim.Numerics.Grids;

namespace InfusionSim.Numerics.Tests.Grids;

/// <summary>What must hold for the cut cells of every connected region.</summary>
internal static class CutCellChecks
{
    /// <summary>Areas, faces, owners and pieces agree with each other, and every cell can be reached from every other.</summary>
    public static void HoldsTogether(CutCellGrid cells)
    {
        UniformGrid grid = cells.Grid;
        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            int owner = cells.OwnerOf[cell];
            (cells.Area[cell] > 0).ShouldBe(owner == cell, $"cell {cell}: area {cells.Area[cell]}, owner {owner}");
            if (owner >= 0) cells.OwnerOf[owner].ShouldBe(owner);
            CheckFace(cell, cells.EastAperture[cell], grid.ColumnOf(cell) + 1 < grid.Columns ? cell + 1 : -1);
            CheckFace(cell, cells.NorthAperture[cell], grid.RowOf(cell) + 1 < grid.Rows ? cell + grid.Columns : -1);
        }

        cells.EdgePieces.ShouldAllBe(p => cells.Area[p.Cell] > 0 && p.Length > 0);
        int count = Enumerable.Range(0, grid.CellCount).Count(cells.HasCloth);
        Reached(cells).ShouldBe(count, "cells reached from the first");

        void CheckFace(int cell, double aperture, int neighbour)
        {
            aperture.ShouldBeGreaterThanOrEqualTo(0);
            if (aperture > 0) (neighbour >= 0 && cells.HasCloth(cell) && cells.HasCloth(neighbour)).ShouldBeTrue();
        }
    }

    /// <summary>Whether nothing was merged: every part owns its own square.</summary>
    public static bool IsUnmerged(CutCellGrid cells) => cells.CutParts.All(p => p.Owner == p.Square) && cells.CutParts.DistinctBy(p => p.Square).Count() == cells.CutParts.Count;

    /// <summary>Largest gap in the closed border of a cell [m]: open faces and edge pieces, each times its outward normal, add up to nothing (Gauss). Holds where nothing was merged.</summary>
    public static double LargestOpenBorder(CutCellGrid cells)
    {
        UniformGrid grid = cells.Grid;
        double[] x = new double[grid.CellCount], y = new double[grid.CellCount];
        for (int cell = 0; cell < grid.CellCount; cell++)
        {
            x[cell] += cells.EastAperture[cell];
            y[cell] += cells.NorthAperture[cell];
            if (grid.ColumnOf(cell) + 1 < grid.Columns) x[cell + 1] -= cells.EastAperture[cell];
            if (grid.RowOf(cell) + 1 < grid.Rows) y[cell + grid.Columns] -= cells.NorthAperture[cell];
        }

        foreach (EdgePiece piece in cells.EdgePieces)
        {
            // The region lies on the left of a piece, so its outward normal points to the right.
            x[piece.Cell] += piece.End.Y - piece.Start.Y;
            y[piece.Cell] -= piece.End.X - piece.Start.X;
        }

        return Math.Max(x.Max(Math.Abs), y.Max(Math.Abs));
    }

    private static int Reached(CutCellGrid cells)
    {
        UniformGrid grid = cells.Grid;
        int first = Array.FindIndex(cells.Area, a => a > 0);
        var seen = new HashSet<int> { first };
        var open = new Stack<int>([first]);
        while (open.TryPop(out int cell))
        {
            if (cells.EastAperture[cell] > 0) Visit(cell + 1);
            if (cells.NorthAperture[cell] > 0) Visit(cell + grid.Columns);
            if (grid.ColumnOf(cell) > 0 && cells.EastAperture[cell - 1] > 0) Visit(cell - 1);
            if (grid.RowOf(cell) > 0 && cells.NorthAperture[cell - grid.Columns] > 0) Visit(cell - grid.Columns);
        }

        return seen.Count;

        void Visit(int cell)
        {
            if (seen.Add(cell)) open.Push(cell);
        }
    }
}

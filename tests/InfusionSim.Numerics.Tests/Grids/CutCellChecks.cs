using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Grids.Cutting;

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
        if (cells.LostPassages.Count > 0) return;
        int count = Enumerable.Range(0, grid.CellCount).Count(cells.HasCloth);
        Reached(cells).ShouldBe(count, "cells reached from the first");

        void CheckFace(int cell, double aperture, int neighbour)
        {
            aperture.ShouldBeGreaterThanOrEqualTo(0);
            if (aperture > 0) (neighbour >= 0 && cells.HasCloth(cell) && cells.HasCloth(neighbour)).ShouldBeTrue();
        }
    }

    /// <summary>Cells that took in a part of another square, gave up an open face to a merger, or are next to a merged square.</summary>
    public static HashSet<int> TouchedByMergers(CutCellGrid cells)
    {
        UniformGrid grid = cells.Grid;
        var touched = new HashSet<int>();
        foreach (CellPart part in cells.CutParts)
        {
            if (part.Owner == part.Square) continue;
            touched.Add(part.Owner);
            int column = grid.ColumnOf(part.Square), row = grid.RowOf(part.Square);
            touched.Add(part.Square);
            if (column > 0) touched.Add(part.Square - 1);
            if (column + 1 < grid.Columns) touched.Add(part.Square + 1);
            if (row > 0) touched.Add(part.Square - grid.Columns);
            if (row + 1 < grid.Rows) touched.Add(part.Square + grid.Columns);
        }

        return touched;
    }

    /// <summary>Largest gap in the closed border of any part of any square, before merging [squares].</summary>
    public static double LargestOpenBorder(CutSquares squares)
    {
        double[] x = new double[squares.NumberCount], y = new double[squares.NumberCount];
        foreach (FaceOpening opening in squares.Openings)
        {
            double[] along = opening.IsEast ? x : y;
            along[opening.PartBefore] += opening.Length;
            along[opening.PartBeyond] -= opening.Length;
        }

        for (int k = 0; k < squares.Pieces.Count; k++)
        {
            GridPiece piece = squares.Pieces[k];
            x[squares.PartOfPiece[k]] += piece.End.V - piece.Start.V;
            y[squares.PartOfPiece[k]] -= piece.End.U - piece.Start.U;
        }

        return squares.Parts.Count == 0 ? 0 : squares.Parts.Max(p => Math.Max(Math.Abs(x[p.Number]), Math.Abs(y[p.Number])));
    }

    /// <summary>
    /// Largest gap in the closed border of a cell [m]: open faces and edge pieces, each times its outward normal, add up to nothing (Gauss). Leaves
    /// out cells touched by mergers, where it need not hold.
    /// </summary>
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

        HashSet<int> touched = TouchedByMergers(cells);
        return Enumerable.Range(0, grid.CellCount).Where(c => !touched.Contains(c)).Select(
            c => Math.Max(Math.Abs(x[c]), Math.Abs(y[c]))).DefaultIfEmpty().Max();
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

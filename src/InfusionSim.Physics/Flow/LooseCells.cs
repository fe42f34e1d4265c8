using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Flow;

/// <summary>Joins the cells of turned cloth that edges and lines have cut off from all slanted ways.</summary>
/// <remarks>
/// Where no way of a stencil runs along the squares, a cell in a corner may keep no way at all although its faces are open. Along x the cloth of such a cell conducts as a
/// channel does, Kxx − Kxy²/Kyy, and along y likewise (textbook): no flow can leave it sideways. Its faces, and those of the cells it is cut off with, get that.
/// </remarks>
internal static class LooseCells
{
    // Of the trace of the tensor; what an open face of such a stencil passes lies far below, any way of a stencil far above.
    private const double Negligible = 1e-9;

    /// <summary>Joins them, after all ways are cut that are to be.</summary>
    /// <param name="cells">The cells.</param>
    /// <param name="cloth">The zones.</param>
    /// <param name="conductances">Conductances between the cells.</param>
    public static void Join(CutCellGrid cells, ClothMap cloth, LatticeOperator conductances)
    {
        if (Enumerable.Range(0, cloth.Zones.Count).All(zone => cloth.StencilOf(zone).WeightOf(1, 0) > 0 && cloth.StencilOf(zone).WeightOf(0, 1) > 0)) return;
        int columns = cells.Grid.Columns;
        int[] zoneOf = [.. Enumerable.Range(0, cells.Area.Length).Select(cell => cells.HasCloth(cell) ? cloth.ZoneAt(cells.CentroidOf(cell)) : -1)];
        int[] group = Groups(cells, conductances, IsSlight);
        for (int cell = 0; cell < group.Length; cell++)
        {
            Raise(conductances.East, cell, cell + 1, cells.EastAperture[cell], 1, 0);
            Raise(conductances.North, cell, cell + columns, cells.NorthAperture[cell], 0, 1);
        }

        bool IsSlight(StencilWay way, int cell, int next) =>
            way.Right + way.Up == 1 && way.Right >= 0 && way.Conductance[cell] <= Negligible * Math.Max(TraceOf(cell), TraceOf(next)) && (Lacks(cell, way) || Lacks(next, way));

        double TraceOf(int cell) => zoneOf[cell] < 0 ? 0 : cloth[zoneOf[cell]].Tensor.Trace;

        bool Lacks(int cell, StencilWay way) => zoneOf[cell] >= 0 && cloth.StencilOf(zoneOf[cell]).WeightOf(way.Right, way.Up) == 0;

        void Raise(double[] faces, int cell, int next, double open, int right, int up)
        {
            if (!(faces[cell] > 0) || group[cell] == group[next] || !IsSlight(new(right, up, faces), cell, next)) return;
            if (zoneOf[cell] < 0 || zoneOf[next] < 0) return;
            double distance = right > 0 ? cells.CentroidX[next] - cells.CentroidX[cell] : cells.CentroidY[next] - cells.CentroidY[cell];
            double half = 1 / Channel(cloth[zoneOf[cell]], right > 0) + 1 / Channel(cloth[zoneOf[next]], right > 0);
            faces[cell] = Math.Max(faces[cell], open / Math.Max(distance, cells.Grid.CellSize / 2) * 2 / half);
        }
    }

    private static double Channel(ClothTensor cloth, bool alongX) => cloth.Tensor.Determinant / (alongX ? cloth.Yy : cloth.Xx);

    // The least index of the cells that each is joined to by ways of some weight.
    private static int[] Groups(CutCellGrid cells, LatticeOperator conductances, Func<StencilWay, int, int, bool> isSlight)
    {
        int[] parent = [.. Enumerable.Range(0, cells.Area.Length)];
        foreach (StencilWay way in conductances.Ways)
        {
            int step = way.Up * cells.Grid.Columns + way.Right;
            for (int cell = 0; cell < parent.Length; cell++)
            {
                if (!(way.Conductance[cell] > 0) || isSlight(way, cell, cell + step)) continue;
                int a = Root(cell), b = Root(cell + step);
                parent[Math.Max(a, b)] = Math.Min(a, b);
            }
        }

        return [.. Enumerable.Range(0, parent.Length).Select(Root)];

        int Root(int cell)
        {
            while (parent[cell] != cell) cell = parent[cell] = parent[parent[cell]];
            return cell;
        }
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Numerics.Stencils;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Flow;

/// <summary>Conductances of turned cloth between cells that share no face.</summary>
/// <remarks>
/// The ways along one direction e of a stencil, each a rectangle one square large about the straight line from middle to middle, tile the
/// plane; each conducts its weight, times |e|²/(e·d) where the middles lie d apart in squares instead of e. A way whose line meets the
/// outline or a cut-out, if only in a corner, is cut: a slit stays tight however thin it is.
/// </remarks>
internal static class SlantedWays
{
    private const double LargestFactor = 2;

    /// <summary>Writes the conductances within one layer.</summary>
    /// <param name="cells">The cells of the layer.</param>
    /// <param name="cloth">Its zones.</param>
    /// <param name="zones">Squares that lie in one of them alone.</param>
    /// <param name="target">Where to write them.</param>
    /// <param name="layer">The layer, counted from the lowest.</param>
    /// <param name="cancellation">Stops the work between rows.</param>
    public static void Write(CutCellGrid cells, ClothMap cloth, CellZones zones, LatticeOperator target, int layer = 0, CancellationToken cancellation = default)
    {
        if (cloth.SlantedArms.Count == 0) return;
        EdgeFinder edges = new(cells);
        int first = layer * target.CellsInLayer;
        foreach ((int right, int up) in cloth.SlantedArms)
        {
            ArmPath path = new(cells, edges, right, up);
            double[] weights = [.. Enumerable.Range(0, cloth.Zones.Count).Select(zone => cloth.WeightIn(zone, right, up))];
            double[] conductance = target.Way(right, up).Conductance;
            for (int cell = 0; cell < cells.Grid.CellCount; cell++)
            {
                if (cells.Grid.ColumnOf(cell) == 0) cancellation.ThrowIfCancellationRequested();
                if (!path.LeadsToCloth(cell, out int next)) continue;
                int zone = path.IsOpen(cell) ? path.OnlyZone(cell, zones) : -1;
                conductance[first + cell] = zone >= 0 ? weights[zone] : Beside(cells, cloth, edges, cell, next, right, up);
            }
        }
    }

    private static double Beside(CutCellGrid cells, ClothMap cloth, EdgeFinder edges, int cell, int next, int right, int up)
    {
        Point2 from = cells.CentroidOf(cell), to = cells.CentroidOf(next);
        if (edges.Meets(from, to)) return 0;
        double along = ((to.X - from.X) * right + (to.Y - from.Y) * up) / cells.Grid.CellSize;
        if (!(along > 0)) return 0;
        double factor = Math.Clamp((right * right + up * up) / along, 1 / LargestFactor, LargestFactor);
        return factor * cloth.WeightAlong(from, to, right, up);
    }
}

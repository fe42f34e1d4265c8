using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>How much of each cell a layer covers, and what its zones add up to there.</summary>
internal sealed class LayerCover
{
    // Corners of zones on the outline meet it within the rounding of their coordinates only.
    private const double LargestBareShare = 1e-6;

    private LayerCover(double[] area, double[] pores, double[] halfWay)
    {
        Area = area;
        Pores = pores;
        HalfWay = halfWay;
    }

    /// <summary>Area of each cell that the layer covers [m²]; 0 where it is bare. [rows × columns], x fastest.</summary>
    public double[] Area { get; }

    /// <summary>Volume that resin can fill in each cell [m³]. [rows × columns], x fastest.</summary>
    public double[] Pores { get; }

    /// <summary>
    /// Conductance per area from the middle of the layer's thickness to its upper or lower face, 2K₃/thickness, mean over the zones of each cell [m].
    /// [rows × columns], x fastest.
    /// </summary>
    public double[] HalfWay { get; }

    /// <summary>Measures a layer.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="cells">Cells of the panel.</param>
    /// <param name="seen">Area of each cell where each zone decides [m²]; null measures it.</param>
    /// <param name="cancellation">Stops the work between squares.</param>
    /// <exception cref="InvalidOperationException">When a place is bare in a layer that may not be.</exception>
    public static LayerCover Of(Layer layer, CutCellGrid cells, IReadOnlyList<double[]> seen, CancellationToken cancellation = default)
    {
        cancellation.ThrowIfCancellationRequested();
        int count = cells.Grid.CellCount;
        double[] area = new double[count], pores = new double[count], halfWay = new double[count];
        for (int cell = 0; cell < count; cell++)
        {
            if (!cells.HasCloth(cell)) continue;
            double covered = 0;
            for (int zone = 0; zone < seen.Count; zone++)
            {
                double here = seen[zone][cell];
                pores[cell] += PoreHeight(layer.Zones[zone]) * here;
                halfWay[cell] += 2 * layer.Zones[zone].Permeability.K3 / layer.Zones[zone].Thickness * here;
                covered += here;
            }

            bool isWhole = covered >= cells.Area[cell] * (1 - LargestBareShare);
            if (!isWhole && !layer.MayBeBare) throw ClothMap.Uncovered(cells.CentroidOf(cell));
            area[cell] = isWhole ? cells.Area[cell] : covered > cells.Area[cell] * LargestBareShare ? covered : 0;
            pores[cell] *= area[cell] == 0 ? 0 : area[cell] / covered;
            halfWay[cell] /= covered > 0 ? covered : 1;
        }

        return new(area, pores, halfWay);
    }

    /// <summary>Area of each cell where each zone of a layer decides [m²]; one array a zone, each [rows × columns], x fastest.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="cells">Cells of the panel.</param>
    /// <param name="cancellation">Stops the work between squares.</param>
    public static IReadOnlyList<double[]> SeenOf(Layer layer, CutCellGrid cells, CancellationToken cancellation = default)
    {
        bool isMixed = layer.Zones.Count > 1 || layer.Zones[0].Area is not null;
        return isMixed ? LayeredCover.AreasSeen([.. layer.Zones.Select(zone => zone.Area)], cells, cancellation) : [cells.Area];
    }

    // What no resin can get into, a core without grooves and holes, holds none.
    private static double PoreHeight(Zone zone) =>
        zone.Permeability is { K1: 0, K2: 0, K3: 0 } ? 0 : zone.Porosity * zone.Thickness;
}

using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;

namespace InfusionSim.Physics.Flow;

/// <summary>Volume that resin can fill in each cell: porosity × thickness × area, summed over the zones a cell lies in.</summary>
internal static class PoreVolumes
{
    // Corners of zones on the outline meet it within the rounding of their coordinates only.
    private const double LargestBareShare = 1e-6;

    public static double[] Of(CutCellGrid cells, ClothMap cloth, CancellationToken cancellation = default)
    {
        double[] volume = new double[cells.Grid.CellCount];
        bool isMixed = cloth.Zones.Count > 1 || cloth.Zones[0].Area is not null;
        IReadOnlyList<double[]> seen = isMixed ? LayeredCover.AreasSeen([.. cloth.Zones.Select(zone => zone.Area)], cells, cancellation) : [cells.Area];
        for (int cell = 0; cell < volume.Length; cell++)
        {
            if (!cells.HasCloth(cell)) continue;
            double covered = 0;
            for (int zone = 0; zone < seen.Count; zone++)
            {
                volume[cell] += cloth[zone].PoreHeight * seen[zone][cell];
                covered += seen[zone][cell];
            }

            if (covered < cells.Area[cell] * (1 - LargestBareShare)) throw ClothMap.Uncovered(cells.CentroidOf(cell));
            volume[cell] *= cells.Area[cell] / covered;
        }

        return volume;
    }
}

using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;
using InfusionSim.Physics.Cloths;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Network;

/// <summary>How high a gap is along its path: as named, or as thick as the cloth beside it.</summary>
internal sealed class GapHeights
{
    // Beside an edge the nearest middle of a cell lies within a square or two.
    private const int Reach = 2;

    private readonly Gap gap;
    private readonly CutCellGrid cells;
    private readonly ClothMap cloth;

    /// <summary>Makes the heights of a gap.</summary>
    /// <param name="gap">The gap.</param>
    /// <param name="cells">The cells beside it.</param>
    /// <param name="cloth">The zones.</param>
    public GapHeights(Gap gap, CutCellGrid cells, ClothMap cloth)
    {
        this.gap = gap;
        this.cells = cells;
        this.cloth = cloth;
    }

    /// <summary>Height at a place of the path [m].</summary>
    /// <param name="place">The place [m].</param>
    public double At(Point2 place)
    {
        if (gap.Height is double named) return named;
        UniformGrid grid = cells.Grid;
        int column = (int)Math.Floor((place.X - grid.Origin.X) / grid.CellSize), row = (int)Math.Floor((place.Y - grid.Origin.Y) / grid.CellSize);
        double nearest = double.PositiveInfinity, height = 0;
        for (int j = Math.Max(0, row - Reach); j <= Math.Min(grid.Rows - 1, row + Reach); j++)
        {
            for (int i = Math.Max(0, column - Reach); i <= Math.Min(grid.Columns - 1, column + Reach); i++)
            {
                int cell = grid.IndexOf(i, j);
                if (!cells.HasCloth(cell)) continue;
                double distance = cells.CentroidOf(cell).DistanceTo(place);
                int zone = distance < nearest ? cloth.ZoneAt(cells.CentroidOf(cell)) : -1;
                if (zone >= 0) (nearest, height) = (distance, cloth.Zones[zone].Thickness);
            }
        }

        return height > 0 ? height : throw new InvalidOperationException($"Gap '{gap.Name}' at x = {place.X * 1000:0.###} mm, y = {place.Y * 1000:0.###} mm lies beside no cloth that tells its height; name its height.");
    }
}

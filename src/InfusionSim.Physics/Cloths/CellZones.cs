using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids;

namespace InfusionSim.Physics.Cloths;

/// <summary>Which squares lie in one zone alone, so that only the others need their zones measured.</summary>
public sealed class CellZones
{
    /// <summary>Stands for the zone of a square of which nothing is covered.</summary>
    public const int Bare = -2;

    private readonly int[] zoneOf;

    private CellZones(int[] zoneOf) => this.zoneOf = zoneOf;

    /// <summary>
    /// Index of the only zone of a square; −1 where an edge of a zone passes through or beside it, <see cref="Bare"/> where no zone lies and none
    /// needs to.
    /// </summary>
    /// <param name="cell">Index of the square.</param>
    public int OnlyZoneOf(int cell) => zoneOf[cell];

    /// <summary>Sorts the squares of a grid.</summary>
    /// <param name="grid">The squares.</param>
    /// <param name="cloth">The zones.</param>
    /// <param name="cancellation">Stops the work between rows.</param>
    public static CellZones Of(UniformGrid grid, ClothMap cloth, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(cloth);
        bool[] touched = new bool[grid.CellCount];
        foreach (Panels.Zone zone in cloth.Zones)
        {
            if (zone.Area is Ring area) Mark(grid, area, touched);
        }

        int[] zoneOf = new int[grid.CellCount];
        for (int cell = 0; cell < zoneOf.Length; cell++)
        {
            if (grid.ColumnOf(cell) == 0) cancellation.ThrowIfCancellationRequested();
            bool sameAsWest = grid.ColumnOf(cell) > 0 && !touched[cell] && !touched[cell - 1];
            zoneOf[cell] = touched[cell] ? -1 : sameAsWest ? zoneOf[cell - 1] : cloth.ZoneAt(grid.CentreOf(cell));
            if (zoneOf[cell] < 0 && !touched[cell] && cloth.MayBeBare) zoneOf[cell] = Bare;
        }

        return new(zoneOf);
    }

    private static void Mark(UniformGrid grid, Ring area, bool[] touched)
    {
        // The margin catches edges that run along a face, seen from either side.
        const double Margin = 1e-6;
        Point2 a = area.Corners[^1];
        foreach (Point2 b in area.Corners)
        {
            foreach (int square in SquaresBeside.Of(grid, a, b, Margin)) touched[square] = true;
            a = b;
        }
    }
}

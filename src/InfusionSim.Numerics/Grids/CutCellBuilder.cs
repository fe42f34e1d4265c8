using InfusionSim.Numerics.Geometry;
using InfusionSim.Numerics.Grids.Cutting;

namespace InfusionSim.Numerics.Grids;

/// <summary>Cuts a region into the squares of a uniform grid.</summary>
/// <remarks>
/// Steps: split the rings at the grid lines; sweep each grid line for the stretches inside the region; trace the parts of the
/// squares that an edge cuts (all others are whole or empty); give slivers and cut-off parts to a neighbour. Places within a few roundings
/// of a grid line count as on it, so a rectangle of whole squares has no cut cell.
/// </remarks>
public static class CutCellBuilder
{
    /// <summary>Cuts a region.</summary>
    /// <param name="region">The region, free of faults (<see cref="RegionFaults"/>); rings may run either way.</param>
    /// <param name="cellSize">Side of a square [m], above 0.</param>
    /// <param name="origin">Lower left corner of the grid [m], at or below and to the left of the whole region; left out: the lower left corner of the region's bounding box.</param>
    /// <param name="cancellation">Stops the work between its steps.</param>
    /// <exception cref="ArgumentException">A ring has fewer than three corners or no area, a coordinate is not finite, or the grid does not cover the region.</exception>
    public static CutCellGrid Build(Region region, double cellSize, Point2? origin = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(region);
        UniformGrid grid = GridOver(region, cellSize, origin);
        cancellation.ThrowIfCancellationRequested();
        var squares = new CutSquares(region, grid);
        cancellation.ThrowIfCancellationRequested();
        var merger = new PartMerger(squares, region.IsWide);
        cancellation.ThrowIfCancellationRequested();
        return new CutCellAssembly(region, squares, merger).ToGrid();
    }

    /// <summary>The grid that <see cref="Build"/> would cut with, before any array is made.</summary>
    /// <param name="region">The region; only its outline counts.</param>
    /// <param name="cellSize">Side of a square [m], above 0.</param>
    /// <param name="origin">Lower left corner of the grid [m]; left out: that of the region's bounding box.</param>
    /// <exception cref="ArgumentException">A ring has fewer than three corners or no area, a coordinate is not finite, or the grid does not cover the region.</exception>
    public static UniformGrid GridOver(Region region, double cellSize, Point2? origin = null)
    {
        ArgumentNullException.ThrowIfNull(region);
        if (!double.IsFinite(cellSize) || cellSize <= 0) throw new ArgumentException($"The side of a square is {cellSize} m; it must be finite and above 0.", nameof(cellSize));
        double left = double.MaxValue, bottom = double.MaxValue, right = double.MinValue, top = double.MinValue;
        foreach (Ring ring in region.Cutouts.Prepend(region.Outline))
        {
            double area = ring.Corners.Count < 3 ? 0 : ring.SignedArea;
            if (!double.IsFinite(area) || area == 0) throw new ArgumentException("A ring needs three finite corners and an area.", nameof(region));
        }

        foreach (Point2 corner in region.Outline.Corners)
        {
            (left, bottom) = (Math.Min(left, corner.X), Math.Min(bottom, corner.Y));
            (right, top) = (Math.Max(right, corner.X), Math.Max(top, corner.Y));
        }

        Point2 start = origin ?? new Point2(left, bottom);
        double onLine = GridFrame.OnLine(start, cellSize, Math.Max(right - start.X, top - start.Y) / cellSize);
        if (!(left >= start.X - onLine * cellSize && bottom >= start.Y - onLine * cellSize)) throw new ArgumentException($"The grid starts at ({start.X}, {start.Y}) m; the region reaches ({left}, {bottom}) m.", nameof(origin));
        double columns = Count(right - start.X), rows = Count(top - start.Y);
        if (columns * rows > Array.MaxLength) throw new ArgumentException($"{columns} × {rows} squares; at most {Array.MaxLength} altogether.", nameof(cellSize));
        return new UniformGrid(start, cellSize, (int)columns, (int)rows);

        double Count(double extent) => Math.Max(1, Math.Ceiling(extent / cellSize - onLine));
    }
}

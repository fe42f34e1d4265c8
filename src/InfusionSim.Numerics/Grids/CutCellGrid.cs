using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids;

/// <summary>A region cut into the squares of a uniform grid: how much of each square lies inside, where its middle is, how open its faces are.</summary>
/// <remarks>
/// All arrays run [rows × columns], x fastest. A square with no area is not part of the flow; slivers and cut-off
/// parts of a square are merged into a neighbour, so the areas add up to the region's.
/// </remarks>
public sealed class CutCellGrid
{
    private bool? isWide;

    /// <summary>The squares.</summary>
    public required UniformGrid Grid { get; init; }

    /// <summary>The region that was cut.</summary>
    public required Region Region { get; init; }

    /// <summary>Area inside the region that a cell owns [m²]; 0 outside and for a merged sliver; a host may own more than a square.</summary>
    public required double[] Area { get; init; }

    /// <summary>Centroid of the owned area, x [m]; the middle of the square where the area is 0.</summary>
    public required double[] CentroidX { get; init; }

    /// <summary>Centroid of the owned area, y [m]; the middle of the square where the area is 0.</summary>
    public required double[] CentroidY { get; init; }

    /// <summary>Open length of the face between (i, j) and (i+1, j) [m]; 0 in the last column and where either owns no area.</summary>
    public required double[] EastAperture { get; init; }

    /// <summary>Open length of the face between (i, j) and (i, j+1) [m]; 0 in the last row and where either owns no area.</summary>
    public required double[] NorthAperture { get; init; }

    /// <summary>Height of the middle of the open part of the east face, y [m]; meaningful where the aperture is above 0.</summary>
    public required double[] EastMiddleY { get; init; }

    /// <summary>Position of the middle of the open part of the north face, x [m]; meaningful where the aperture is above 0.</summary>
    public required double[] NorthMiddleX { get; init; }

    /// <summary>Pieces of the outline and the cut-outs, each with the cell that owns it.</summary>
    public required IReadOnlyList<EdgePiece> EdgePieces { get; init; }

    /// <summary>Cell that owns the area of a square [-]: itself, the host of a merged sliver, or −1 outside the region.</summary>
    public required int[] OwnerOf { get; init; }

    /// <summary>The parts of all squares that an edge cuts, square by square, the largest of each first; whole and empty squares have none.</summary>
    public IReadOnlyList<CellPart> CutParts { get; init; } = [];

    /// <summary>
    /// Places where the drawing is open but the cells are not, because the passage is narrower than these squares can show [m]; mostly none. A
    /// smaller cell size opens them.
    /// </summary>
    public IReadOnlyList<Point2> LostPassages { get; init; } = [];

    /// <summary>Whether the region is wide, as <see cref="Region.IsWide"/> tells it.</summary>
    public bool IsWide => isWide ??= Region.IsWide;

    /// <summary>Whether a cell owns area and so takes part in the flow.</summary>
    /// <param name="cell">Index of the cell.</param>
    public bool HasCloth(int cell) => Area[cell] > 0;

    /// <summary>Middle of a cell's area [m].</summary>
    /// <param name="cell">Index of the cell.</param>
    public Point2 CentroidOf(int cell) => new(CentroidX[cell], CentroidY[cell]);
}

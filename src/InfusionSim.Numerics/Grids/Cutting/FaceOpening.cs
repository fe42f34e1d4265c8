namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>A stretch of the face between two squares that lies inside the region.</summary>
/// <param name="isEast">True for the face to the right of <paramref name="square"/>, false for the one above it.</param>
/// <param name="square">Square to the left of or below the face.</param>
/// <param name="neighbour">Square to the right of or above the face.</param>
/// <param name="low">Lower or left end of the stretch [squares].</param>
/// <param name="high">Upper or right end of the stretch [squares].</param>
internal sealed class FaceOpening(bool isEast, int square, int neighbour, double low, double high)
{
    /// <summary>True for an east face, false for a north face.</summary>
    public bool IsEast { get; } = isEast;

    /// <summary>Square before the face.</summary>
    public int Square { get; } = square;

    /// <summary>Square beyond the face.</summary>
    public int Neighbour { get; } = neighbour;

    /// <summary>Lower or left end [squares].</summary>
    public double Low { get; } = low;

    /// <summary>Upper or right end [squares].</summary>
    public double High { get; } = high;

    /// <summary>Part of the square before the face that the stretch opens into; the square's own index for its largest part.</summary>
    public int PartBefore { get; set; } = square;

    /// <summary>Part of the square beyond the face that the stretch opens into; the square's own index for its largest part.</summary>
    public int PartBeyond { get; set; } = neighbour;

    /// <summary>Open length [squares].</summary>
    public double Length => High - Low;

    /// <summary>The part at the other side.</summary>
    /// <param name="part">The part at this side.</param>
    public int Across(int part) => part == PartBefore ? PartBeyond : PartBefore;
}

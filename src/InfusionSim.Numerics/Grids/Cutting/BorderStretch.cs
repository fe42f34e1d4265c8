namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>A directed stretch of the border of the region inside one square, the region on its left.</summary>
/// <param name="Start">Where it begins [squares].</param>
/// <param name="End">Where it ends [squares].</param>
/// <param name="Piece">Index of the edge piece, or −1 for an open stretch of a face.</param>
/// <param name="Opening">The open stretch, or null for an edge piece.</param>
internal readonly record struct BorderStretch(GridPoint Start, GridPoint End, int Piece, FaceOpening? Opening);

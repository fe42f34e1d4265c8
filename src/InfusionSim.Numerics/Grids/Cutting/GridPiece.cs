using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>A piece of a ring that lies in one square or along one grid line, with the region on its left.</summary>
/// <param name="Start">Where it begins [squares].</param>
/// <param name="End">Where it ends [squares].</param>
/// <param name="From">Where it begins [m].</param>
/// <param name="To">Where it ends [m].</param>
/// <param name="RingIndex">0 for the outline, 1 for the first cut-out and so on.</param>
/// <param name="Square">Square that holds the region along the piece.</param>
/// <param name="OnGridLine">Whether it runs along a grid line and so cuts no square.</param>
internal readonly record struct GridPiece(
    GridPoint Start, GridPoint End, Point2 From, Point2 To, int RingIndex, int Square, bool OnGridLine);

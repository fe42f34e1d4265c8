using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Air;

/// <summary>A place that stays without resin, with the gas that keeps it open.</summary>
/// <param name="At">Middle of what stays dry [m].</param>
/// <param name="Cells">Cells that are still dry at the end, at least in part; indices into the cut-cell grid.</param>
/// <param name="Area">Dry area that stays, seen from above: the driest layer of the part counts [m²].</param>
/// <param name="SealedClock">Drive clock at which it was cut off from every vent that still passed air [-].</param>
/// <param name="SealedArea">Dry area at that moment [m²].</param>
/// <param name="GasVolume">Volume of gas in the pores at the end [m³].</param>
/// <param name="EndClock">Drive clock at which it has shrunk to that [-].</param>
public sealed record DrySpot(
    Point2 At, IReadOnlyList<int> Cells, double Area, double SealedClock, double SealedArea, double GasVolume, double EndClock)
{
    /// <summary>Nodes that are still dry at the end, at least in part; with one layer its cells.</summary>
    public IReadOnlyList<int> Nodes { get; init; } = Cells;
}

using InfusionSim.Physics.Air;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Vacuum;

namespace InfusionSim.Physics.Forecasts;

/// <summary>Where the resin goes on one panel, before anyone asks when: every resin that shares the flow is judged on it without another solve.</summary>
/// <param name="Map">Where the resin goes.</param>
/// <param name="DrySpots">What stays dry, largest first.</param>
/// <param name="NumericalError">How far the fill time may be off from the squares alone [-].</param>
public sealed record FollowedFlow(FillMap Map, IReadOnlyList<DrySpot> DrySpots, double NumericalError)
{
    /// <summary>The same fill on squares twice as large; null where its end alone is known.</summary>
    internal FillMap? OnLargerSquares { get; init; }

    /// <summary>How hard it is for gas to get from the dry cloth to the vents; null when no leak is given, and when no air can leave.</summary>
    public DryRegionPressure? DryCloth { get; init; }
}

using InfusionSim.Protocol.V1;

namespace InfusionSim.Gallery.Pictures;

/// <summary>A plan with everything the service said to it.</summary>
/// <param name="Name">Name of the plan's file, without its ending.</param>
/// <param name="Plan">The plan.</param>
/// <param name="Response">Forecast and front map.</param>
/// <param name="Moments">Moments with pressures, evenly spaced up to the end.</param>
internal sealed record Answered(string Name, InfusionPlan Plan, PredictFillResponse Response, IReadOnlyList<FillMoment> Moments)
{
    /// <summary>Every n-th moment, the last one among them.</summary>
    internal IReadOnlyList<FillMoment> Every(int n) => [.. Moments.Where((_, i) => (i + 1) % n == 0)];
}

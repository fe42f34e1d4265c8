using InfusionSim.Physics.Clamps;
using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>How far the fill time may be off from the squares alone.</summary>
internal static class GridError
{
    // Enough to see when clamps are turned and air is cut off.
    public const int CoarseMoments = 12;

    /// <summary>The fill on squares twice as large, where its end cannot be told without following it: with clamps, and with trapped air; null elsewhere.</summary>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="map">The fill on the panel's own squares.</param>
    /// <param name="gravity">Weight of the resin over the drive.</param>
    /// <param name="conditions">What is done, what drives it and leaks in.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static FillMap? OnLargerSquares(Panel panel, FillMap map, GravityHead gravity, FillConditions conditions, CancellationToken cancellation)
    {
        bool isPlain = conditions.Rules?.AreNone != false && map.Pockets.Count == 0;
        return isPlain || map.FillClock == 0 ? null : FillMap.Compute(ProblemOf(panel, gravity, cancellation), conditions, CoarseMoments, cancellation: cancellation);
    }

    /// <summary>Difference to the fill clock on squares twice as large, over the fill clock [-].</summary>
    /// <remarks>
    /// At first order the error of the finer grid is as large as the difference, at second order a third of it
    /// (Richardson, Phil. Trans. R. Soc. A 210 (1911) 307, from memory); the larger is shown.
    /// </remarks>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="map">The fill on the panel's own squares.</param>
    /// <param name="gravity">Weight of the resin over the drive.</param>
    /// <param name="coarse">The fill on larger squares; null to compute its end alone.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static double Of(Panel panel, FillMap map, GravityHead gravity, FillMap? coarse, CancellationToken cancellation)
    {
        double clock = map.FillClock;
        if (clock == 0) return 0;
        double coarseClock = coarse?.FillClock ?? FillMap.TotalOf(ProblemOf(panel, gravity, cancellation), cancellation).Clock;
        return Math.Abs(coarseClock - clock) / clock;
    }

    // The same sub-layers, or their own error would be counted as that of the squares.
    private static FillProblem ProblemOf(Panel panel, GravityHead gravity, CancellationToken cancellation) => TiltedPanel.Of(
        FillProblemBuilder.Build(panel with { CellSize = 2 * panel.CellSize, SubLayers = SubLayers.CountFor(panel) }, cancellation: cancellation), gravity);
}

using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Gravity;
using InfusionSim.Physics.Layers;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Forecasts;

/// <summary>How far the fill time may be off from the squares alone.</summary>
internal static class GridError
{
    /// <summary>Difference to the fill clock on squares twice as large, over the fill clock [-].</summary>
    /// <remarks>
    /// At first order the error of the finer grid is as large as the difference, at second order a third of it
    /// (Richardson, Phil. Trans. R. Soc. A 210 (1911) 307, from memory); the larger is shown.
    /// </remarks>
    /// <param name="panel">Cloth and line plan.</param>
    /// <param name="total">End of the fill on the panel's own squares.</param>
    /// <param name="gravity">Weight of the resin over the drive.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static double Of(Panel panel, FillTotal total, GravityHead gravity, CancellationToken cancellation)
    {
        if (total.Clock == 0) return 0;
        // The same sub-layers, or their own error would be counted as that of the squares.
        Panel onLargerSquares = panel with { CellSize = 2 * panel.CellSize, SubLayers = SubLayers.CountFor(panel) };
        FillProblem coarse = TiltedPanel.Of(FillProblemBuilder.Build(onLargerSquares, cancellation: cancellation), gravity);
        FillTotal coarseTotal = FillMap.TotalOf(coarse, cancellation);
        return Math.Abs(coarseTotal.Clock - total.Clock) / total.Clock;
    }
}

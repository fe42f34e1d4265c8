using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Forecasts;

/// <summary>How the pressure runs along a line with a bore or a hose, shortly before the end of the fill.</summary>
/// <remarks>
/// Taken at 99 % of the drive clock at the end. At the end itself all resin in a panel without an open vent stands still and the pressure is
/// the same everywhere; early in the fill every line is weak for a moment, because the cloth beside it still drinks without limit.
/// </remarks>
/// <param name="Volume">What line and hose hold when they are full, the hose of a pot apart [m³].</param>
/// <param name="Points">Places along the line, from its first point to its last.</param>
/// <param name="Start">Pressure where its hose joins it, or at its first point, above the bag's, over the driving pressure [-].</param>
/// <param name="End">Pressure at the end of the line that is farthest from the pot's pressure, likewise [-].</param>
/// <param name="EndAt">Where that end lies [m].</param>
public sealed record LineForecast(double Volume, IReadOnlyList<LinePoint> Points, double Start, double End, Point2 EndAt)
{
    /// <summary>Share of the pressure at the start that a feed line must hold at its end [-] (common practice: 5 % is about what the vacuum of a shop varies by).</summary>
    public const double WeakBelow = 0.95;

    /// <summary>Pressure at the far end over that at the start [-].</summary>
    public double EndRatio => End / Start;
}

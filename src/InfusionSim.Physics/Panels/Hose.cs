using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Panels;

/// <summary>A hose of round bore.</summary>
/// <param name="Bore">Inner diameter [m], above 0.</param>
/// <param name="Length">Length [m], above 0.</param>
/// <param name="IsPrimed">Whether it stands full of resin when the first feed opens.</param>
/// <param name="JoinsAt">Where on the line it ends [m]; null for the first point of the line.</param>
public sealed record Hose(double Bore, double Length, bool IsPrimed = false, Point2? JoinsAt = null);

using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Panels;

/// <summary>The direction in which the cloth of a zone conducts best.</summary>
internal static class FibreDirection
{
    // Below this ratio a zone runs as well one way as the other, and a direction would say more than there is.
    private const double LeastRatio = 1.05;

    // Below this angle the cloth lies along the drawing.
    private const double LeastAngle = 0.5;

    /// <summary>Angle of the better direction, anticlockwise from x, above -90 and up to 90; null when the cloth lies along the drawing or runs alike both ways [°].</summary>
    internal static double? Of(Zone zone)
    {
        var (along, across, mixed) = zone.LayUp is { Plies.Count: > 0 } layUp
            ? layUp.Plies.Aggregate((0.0, 0.0, 0.0), (sum, ply) => Add(sum, Tensor(ply.Permeability, ply.AngleDeg), ply.Count * ply.ThicknessMm))
            : Tensor(zone.Permeability, zone.Permeability?.AngleDeg ?? 0);
        var (middle, half) = ((along + across) / 2, Math.Sqrt(Math.Pow((along - across) / 2, 2) + mixed * mixed));
        if (middle + half < LeastRatio * (middle - half))
        {
            return null;
        }

        var angle = Math.Atan2(2 * mixed, along - across) * 90 / Math.PI;
        return Math.Abs(angle) < LeastAngle || Math.Abs(angle) > 90 - LeastAngle ? null : angle;
    }

    private static (double Along, double Across, double Mixed) Tensor(Permeability? permeability, double angleDeg)
    {
        var (k1, k2) = (permeability?.K1M2 ?? 0, permeability?.K2M2 ?? 0);
        var (sin, cos) = Math.SinCos(angleDeg * Math.PI / 180);
        return (k1 * cos * cos + k2 * sin * sin, k1 * sin * sin + k2 * cos * cos, (k1 - k2) * sin * cos);
    }

    private static (double Along, double Across, double Mixed) Add(
        (double Along, double Across, double Mixed) sum, (double Along, double Across, double Mixed) ply, double weight) =>
        (sum.Along + weight * ply.Along, sum.Across + weight * ply.Across, sum.Mixed + weight * ply.Mixed);
}

using InfusionSim.Numerics.Lattice;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Cloths;

/// <summary>What plies laid on each other come to as one zone.</summary>
/// <remarks>
/// In the plane the plies lie side by side for the flow: their tensors, each turned by its angle, add up by thickness. Through the thickness they lie
/// in series:
/// thickness over the sum of thickness/K3 (textbook: layers in parallel and in series). Holds while resin evens out through the thickness faster than
/// it runs along it.
/// </remarks>
/// <param name="Thickness">Thickness of all plies [m].</param>
/// <param name="Permeability">Permeability of the whole, K1 at least as large as K2.</param>
public sealed record LaidPlies(double Thickness, Permeability Permeability)
{
    /// <summary>Adds up plies.</summary>
    /// <param name="plies">The plies, at least one; their order does not matter.</param>
    public static LaidPlies Of(IReadOnlyList<Ply> plies)
    {
        ArgumentNullException.ThrowIfNull(plies);
        ArgumentOutOfRangeException.ThrowIfZero(plies.Count);
        double thickness = 0, xx = 0, yy = 0, xy = 0, resistance = 0;
        foreach (Ply ply in plies)
        {
            double own = ply.Count * ply.Thickness;
            PlaneTensor tensor = PlaneTensor.Of(ply.Permeability.K1, ply.Permeability.K2, ply.Permeability.Angle);
            thickness += own;
            xx += own * tensor.Xx;
            yy += own * tensor.Yy;
            xy += own * tensor.Xy;
            resistance += own / ply.Permeability.K3;
        }

        (double first, double second, double angle) = new PlaneTensor(xx / thickness, yy / thickness, xy / thickness).Principal();
        return new(thickness, new(first, second, thickness / resistance, angle));
    }
}

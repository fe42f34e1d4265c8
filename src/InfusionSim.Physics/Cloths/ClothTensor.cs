using InfusionSim.Numerics.Lattice;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Cloths;

/// <summary>A zone's numbers in the plane: the permeability tensor times thickness, and what a place holds.</summary>
/// <param name="Xx">Kxx times thickness [m³].</param>
/// <param name="Yy">Kyy times thickness [m³].</param>
/// <param name="Xy">Kxy times thickness [m³]; 0 when the zone's axes lie along x and y.</param>
/// <param name="PoreHeight">Porosity times thickness: pore volume per area [m].</param>
public readonly record struct ClothTensor(double Xx, double Yy, double Xy, double PoreHeight)
{
    // A hundredth of a degree: below it the cross term K1 − K2 puts in is lost in the scatter of any cloth.
    private const double AngleTolerance = 1.7e-4;

    // Off the axes of the squares the ways of the stencil span more cells the larger the ratio is: a groove that lets nothing pass sideways counts as
    // passing a little.
    private const double LargestRatio = 1000;

    /// <summary>Whether a fall of pressure along x drives flow along x alone.</summary>
    public bool IsAligned => Xy == 0;

    /// <summary>The tensor without what a place holds.</summary>
    public PlaneTensor Tensor => new(Xx, Yy, Xy);

    /// <summary>Conductance the same flow would meet in cloth alike in all directions, √(K1·K2) times thickness [m³].</summary>
    public double MeanConductance => IsAligned ? Math.Sqrt(Xx * Yy) : Math.Sqrt(Math.Max(0, Xx * Yy - Xy * Xy));

    /// <summary>Permeability times thickness along a direction, n·K·n [m³].</summary>
    /// <param name="x">Component of the unit vector along x [-].</param>
    /// <param name="y">Component of the unit vector along y [-].</param>
    public double ConductanceAlong(double x, double y) => Xx * x * x + Yy * y * y + 2 * Xy * x * y;

    /// <summary>Numbers of a zone at any angle.</summary>
    /// <param name="zone">The zone.</param>
    public static ClothTensor Of(Zone zone)
    {
        ArgumentNullException.ThrowIfNull(zone);
        (double k1, double k2, _, double angle) = zone.Permeability;
        double thickness = zone.Thickness, poreHeight = zone.Porosity * zone.Thickness;
        if (k1 == k2 || Math.Abs(Math.Sin(angle)) <= AngleTolerance) return new(k1 * thickness, k2 * thickness, 0, poreHeight);
        if (Math.Abs(Math.Cos(angle)) <= AngleTolerance) return new(k2 * thickness, k1 * thickness, 0, poreHeight);
        (k1, k2) = (Math.Max(k1, k2 / LargestRatio), Math.Max(k2, k1 / LargestRatio));
        PlaneTensor tensor = PlaneTensor.Of(k1 * thickness, k2 * thickness, angle);
        return new(tensor.Xx, tensor.Yy, tensor.Xy, poreHeight);
    }
}

namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>Front of a small fitting near a long straight wall.</summary>
/// <remarks>
/// By the image in the wall it is half of the front of two equal feeds 2d apart, a Neumann oval:
/// ϱ² = 2r² + 2d² cos 2α about the foot of the perpendicular, α from the wall's normal, when the wet area is πr².
/// Source: Richardson, J. Fluid Mech. 102 (1981) 263, from memory; moments after Richardson, J. Fluid Mech. 56 (1972) 609.
/// </remarks>
/// <param name="Distance">From the fitting to the wall [m].</param>
/// <param name="EqualRadius">Radius of the circle of the same wet area [m], above the distance.</param>
public sealed record WallOval(double Distance, double EqualRadius)
{
    /// <summary>From the foot of the perpendicular to where the front meets the wall [m].</summary>
    public double Contact => RadiusAt(Math.PI / 2);

    /// <summary>From the wall to the farthest point of the front [m].</summary>
    public double Reach => RadiusAt(0);

    /// <summary>From the foot of the perpendicular to the front [m].</summary>
    /// <param name="angle">Angle from the wall's normal [rad].</param>
    public double RadiusAt(double angle) =>
        Math.Sqrt(2 * EqualRadius * EqualRadius + 2 * Distance * Distance * Math.Cos(2 * angle));
}

namespace InfusionSim.Physics.Quality;

/// <summary>How a resin wets the fibres.</summary>
/// <param name="SurfaceTension">Surface tension of the resin against air [N/m], above 0.</param>
/// <param name="ContactAngle">Angle between resin and fibre at the front [rad], from 0 (wets fully) to below a right angle.</param>
public sealed record Wetting(double SurfaceTension, double ContactAngle = 0)
{
    /// <summary>Pull on the front per length of fibre it wets, γ cos θ [N/m].</summary>
    public double Pull => SurfaceTension * Math.Cos(ContactAngle);
}

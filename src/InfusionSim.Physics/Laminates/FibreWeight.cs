namespace InfusionSim.Physics.Laminates;

/// <summary>What a roll of cloth says about its fibre, for one ply or several alike.</summary>
/// <param name="PerArea">Mass of fibre in one ply over its area [kg/m²], above 0.</param>
/// <param name="Density">Density of the fibre itself, without air between [kg/m³], above 0.</param>
/// <param name="Count">Plies that lie on each other [-], at least 1.</param>
public sealed record FibreWeight(double PerArea, double Density, int Count = 1)
{
    /// <summary>Mass of fibre in all plies over their area [kg/m²].</summary>
    public double AllPerArea => Count * PerArea;

    /// <summary>Thickness of one ply: its fibre takes up this share of it [m].</summary>
    /// <remarks>Areal mass / (density of the fibre times fibre volume fraction); a definition.</remarks>
    /// <param name="fibreVolumeFraction">Share of the thickness that is fibre [-], above 0 and below 1.</param>
    public double PlyThickness(double fibreVolumeFraction)
    {
        if (!(fibreVolumeFraction is > 0 and < 1)) throw new ArgumentOutOfRangeException(nameof(fibreVolumeFraction), fibreVolumeFraction, "It must lie between 0 and 1.");
        return PerArea / (Density * fibreVolumeFraction);
    }
}

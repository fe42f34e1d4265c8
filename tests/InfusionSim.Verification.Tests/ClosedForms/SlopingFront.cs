namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>A straight front that climbs or runs down, fed over its whole width, on the drive clock.</summary>
/// <remarks>
/// Source: φ dx/dθ = K (1/x − s/H) with H = Δp/(ρg) and s the sine of the slope, integrated: the rise of liquid in a capillary with weight, Washburn,
/// Phys. Rev. 17 (1921) 273 (from memory), derived anew for cloth.
/// </remarks>
public static class SlopingFront
{
    /// <summary>Drive clock at which the front stands at a distance [-].</summary>
    /// <param name="distance">Distance from the feed along the panel [m].</param>
    /// <param name="rise">Share of the drive that a metre along the panel takes, s/H [1/m]; below 0 downhill.</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    public static double ClockAt(double distance, double rise, double permeability, double porosity) =>
        porosity / permeability * (-distance / rise - Math.Log(1 - distance * rise) / (rise * rise));
}

namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>A straight front fed over its whole width, on the drive clock.</summary>
/// <remarks>
/// Source: φ dx/dθ = K/x integrates to x² = 2Kθ/φ; Rudd, Long, Kendall and Mangin, Liquid Moulding Technologies (1997), from memory; one line of
/// derivation suffices.
/// </remarks>
public static class StraightFront
{
    /// <summary>Drive clock at which the front stands at a distance [-].</summary>
    /// <param name="distance">Distance from the feed [m].</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    public static double ClockAt(double distance, double permeability, double porosity) =>
        porosity * distance * distance / (2 * permeability);
}

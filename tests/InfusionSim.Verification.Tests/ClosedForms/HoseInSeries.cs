using InfusionSim.Verification.Tests.Settings;

namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>A straight front behind a hose.</summary>
public static class HoseInSeries
{
    /// <summary>
    /// Time for the front to reach a distance under the reference drive and viscosity [s]: the hose counts like λ = 8 K A l/(π r⁴) of cloth; derived
    /// from Hagen–Poiseuille and Darcy.
    /// </summary>
    /// <param name="permeability">Permeability of the cloth [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    /// <param name="distance">Distance of the front from the feed line [m].</param>
    /// <param name="section">Cross-section of the cloth [m²].</param>
    /// <param name="hoseRadius">Inner radius of the hose [m].</param>
    /// <param name="hoseLength">Length of the hose [m].</param>
    /// <param name="isPrimed">Whether the hose is full from the start.</param>
    public static double FillTime(double permeability, double porosity, double distance, double section, double hoseRadius, double hoseLength, bool isPrimed)
    {
        double extra = 8 * permeability * section * hoseLength / (Math.PI * Math.Pow(hoseRadius, 4));
        double cloth = porosity * Reference.Viscosity / (permeability * Reference.Drive) * (distance * distance / 2 + extra * distance);
        double hose = 4 * Reference.Viscosity * hoseLength * hoseLength / (hoseRadius * hoseRadius * Reference.Drive);
        return isPrimed ? cloth : hose + cloth;
    }
}

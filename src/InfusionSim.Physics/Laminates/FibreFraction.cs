namespace InfusionSim.Physics.Laminates;

/// <summary>Fibre by weight and fibre by volume, one from the other; definitions, for a laminate without air.</summary>
public static class FibreFraction
{
    /// <summary>Share of a laminate's weight that is fibre [-].</summary>
    /// <param name="byVolume">Share of its volume that is fibre [-], 0 to 1.</param>
    /// <param name="fibreDensity">Density of the fibre [kg/m³], above 0.</param>
    /// <param name="resinDensity">Density of the resin [kg/m³], above 0.</param>
    public static double ByWeight(double byVolume, double fibreDensity, double resinDensity) =>
        byVolume * fibreDensity / (byVolume * fibreDensity + (1 - byVolume) * resinDensity);

    /// <summary>Share of a laminate's volume that is fibre [-].</summary>
    /// <param name="byWeight">Share of its weight that is fibre [-], 0 to 1.</param>
    /// <param name="fibreDensity">Density of the fibre [kg/m³], above 0.</param>
    /// <param name="resinDensity">Density of the resin [kg/m³], above 0.</param>
    public static double ByVolume(double byWeight, double fibreDensity, double resinDensity) =>
        byWeight / fibreDensity / (byWeight / fibreDensity + (1 - byWeight) / resinDensity);
}

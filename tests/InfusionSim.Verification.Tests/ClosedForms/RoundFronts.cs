namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>Fronts that stay circles, on the drive clock.</summary>
public static class RoundFronts
{
    /// <summary>Drive clock at which the front of a round feed has a radius [-].</summary>
    /// <remarks>
    /// θ = φ/(2K) [R² ln(R/r₀) − (R² − r₀²)/2]. Source: Adams, Russel and Rebenfeld, Int. J. Multiphase Flow 14 (1988) 203–215, from memory; follows
    /// from Q = 2πhKΔp/(μ ln(r/r₀)) = 2πrhφ dr/dt.
    /// </remarks>
    /// <param name="radius">Radius of the front [m].</param>
    /// <param name="feedRadius">Radius of the feed [m].</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    public static double OutwardClockAt(double radius, double feedRadius, double permeability, double porosity) =>
        porosity / (2 * permeability)
        * (radius * radius * Math.Log(radius / feedRadius) - (radius * radius - feedRadius * feedRadius) / 2);

    /// <summary>Drive clock at which the front of a disc fed round its rim has shrunk to a radius [-].</summary>
    /// <remarks>
    /// Derived in the same way with the feed outside: θ = φ/K [(R² − r²)/4 − (r²/2) ln(R/r)]; at r = 0 half the clock of a strip of length R.
    /// </remarks>
    /// <param name="radius">Radius of the front [m], 0 for the full disc.</param>
    /// <param name="rim">Radius of the disc [m].</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    public static double InwardClockAt(double radius, double rim, double permeability, double porosity)
    {
        double square = radius * radius;
        double logarithm = radius > 0 ? square / 2 * Math.Log(rim / radius) : 0;
        return porosity / permeability * ((rim * rim - square) / 4 - logarithm);
    }

    /// <summary>Radius of the front of a disc fed round its rim when a share of it is full [m]; found by bisection.</summary>
    /// <param name="clock">Drive clock [-].</param>
    /// <param name="rim">Radius of the disc [m].</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    public static double InwardRadiusAt(double clock, double rim, double permeability, double porosity)
    {
        double low = 0, high = rim;
        for (int k = 0; k < 200; k++)
        {
            double middle = (low + high) / 2;
            if (InwardClockAt(middle, rim, permeability, porosity) > clock) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }
}

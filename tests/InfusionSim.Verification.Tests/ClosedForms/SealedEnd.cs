using InfusionSim.Physics.Clock;

namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>A strip fed at one end and sealed at the other, whose air is pressed together.</summary>
/// <remarks>
/// Derived: the front stands at p₀ L/(L − x) (Boyle), so φμ x dx/dt = K (p_in − p₀ L/(L − x)); with x_e = L (1 − p₀/p_in) the integral is
/// t = φμ/(K p_in) { x²/2 + (L − x_e) [ −x − x_e ln(1 − x/x_e) ] }.
/// </remarks>
public static class SealedEnd
{
    /// <summary>Time at which the front stands at a place [s].</summary>
    /// <param name="place">Distance from the feed [m], below that at which it comes to rest.</param>
    /// <param name="length">Length of the strip [m].</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    /// <param name="viscosity">Viscosity [Pa·s].</param>
    /// <param name="bag">Pressure of the air at first, and of the feed.</param>
    public static double TimeTo(double place, double length, double permeability, double porosity, double viscosity, Bag bag)
    {
        double end = length * (1 - bag.Pressure / bag.Ambient);
        return porosity * viscosity / (permeability * bag.Ambient) * (place * place / 2 + (length - end) * (-place - end * Math.Log(1 - place / end)));
    }
}

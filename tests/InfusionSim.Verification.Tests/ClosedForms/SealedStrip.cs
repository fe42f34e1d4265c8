namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>A strip fed at both ends whose only vent shuts when resin reaches it.</summary>
/// <remarks>
/// Derived: both fronts run as if alone until the nearer one stands at the vent; what lies between them then is
/// sealed at the pressure under the bag, and shrinks by p_v/p_in (Boyle) once the resin round it stands at the feeds' pressure.
/// </remarks>
public static class SealedStrip
{
    /// <summary>Drive clock at which the vent is covered [-].</summary>
    /// <param name="ventAt">From the nearer feed to the vent [m].</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    public static double SealedClock(double ventAt, double permeability, double porosity) =>
        StraightFront.ClockAt(ventAt, permeability, porosity);

    /// <summary>Length that is dry when it is sealed [m].</summary>
    /// <param name="length">Length of the strip [m].</param>
    /// <param name="ventAt">From the nearer feed to the vent [m].</param>
    public static double SealedLength(double length, double ventAt) => length - 2 * ventAt;
}

namespace InfusionSim.Verification.Tests.ClosedForms;

/// <summary>A straight front through zones laid one behind the other, on the drive clock.</summary>
/// <remarks>
/// Derived: while the front runs through zone j the flow is Δp over μ times the sum of the resistances behind it, so
/// θ = Σⱼ φⱼhⱼLⱼ (Σ_{i&lt;j} Lᵢ/(Kᵢhᵢ) + Lⱼ/(2Kⱼhⱼ)) for unit width.
/// </remarks>
public static class ZonesInSeries
{
    /// <summary>One zone of the series.</summary>
    /// <param name="Length">Length along the flow [m].</param>
    /// <param name="Permeability">Permeability [m²].</param>
    /// <param name="Porosity">Porosity [-].</param>
    /// <param name="Thickness">Thickness [m].</param>
    public sealed record Part(double Length, double Permeability, double Porosity, double Thickness);

    /// <summary>Drive clock at which the last zone is full [-].</summary>
    /// <param name="parts">Zones from the feed on.</param>
    public static double FillClock(IReadOnlyList<Part> parts)
    {
        double clock = 0, resistanceBehind = 0;
        foreach (Part part in parts)
        {
            double own = part.Length / (part.Permeability * part.Thickness);
            clock += part.Porosity * part.Thickness * part.Length * (resistanceBehind + own / 2);
            resistanceBehind += own;
        }

        return clock;
    }
}

using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Laminates;

/// <summary>What a zone weighs when every pore of it is full.</summary>
/// <param name="Thickness">Thickness under the bag [m].</param>
/// <param name="FibreVolumeFraction">Share of the thickness that is fibre [-].</param>
/// <param name="FibreMass">Mass of fibre over the area [kg/m²].</param>
/// <param name="ResinMass">Mass of resin over the area [kg/m²].</param>
public sealed record Laminate(double Thickness, double FibreVolumeFraction, double FibreMass, double ResinMass)
{
    /// <summary>Mass over the area [kg/m²].</summary>
    public double Mass => FibreMass + ResinMass;

    /// <summary>Share of the weight that is fibre [-].</summary>
    public double FibreWeightFraction => FibreMass / Mass;

    /// <summary>Density of fibre and resin together [kg/m³].</summary>
    public double Density => Mass / Thickness;

    /// <summary>A laminate that is as thick as its fibre makes it.</summary>
    /// <param name="fibres">Its plies, at least one.</param>
    /// <param name="fibreVolumeFraction">Share of the thickness that is fibre [-], above 0 and below 1.</param>
    /// <param name="resinDensity">Density of the mixed resin [kg/m³], above 0.</param>
    public static Laminate Of(IReadOnlyList<FibreWeight> fibres, double fibreVolumeFraction, double resinDensity)
    {
        ArgumentNullException.ThrowIfNull(fibres);
        ArgumentOutOfRangeException.ThrowIfZero(fibres.Count);
        return Full(fibres.Sum(fibre => fibre.Count * fibre.PlyThickness(fibreVolumeFraction)), fibreVolumeFraction, fibres, resinDensity);
    }

    /// <summary>The laminate of a zone; null where the weight of its fibre is not known.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="resinDensity">Density of the mixed resin [kg/m³], above 0.</param>
    public static Laminate? Of(Zone zone, double resinDensity)
    {
        ArgumentNullException.ThrowIfNull(zone);
        return zone.Fibres.Count == 0 ? null : Full(zone.Thickness, 1 - zone.Porosity, zone.Fibres, resinDensity);
    }

    private static Laminate Full(double thickness, double fibreVolumeFraction, IReadOnlyList<FibreWeight> fibres, double resinDensity) =>
        new(thickness, fibreVolumeFraction, fibres.Sum(fibre => fibre.AllPerArea), thickness * (1 - fibreVolumeFraction) * resinDensity);
}

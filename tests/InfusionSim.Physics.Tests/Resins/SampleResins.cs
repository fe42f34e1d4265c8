using InfusionSim.Physics.Resins;

namespace InfusionSim.Physics.Tests.Resins;

/// <summary>Resins for tests: published sets with their source, invented ones that say so.</summary>
internal static class SampleResins
{
    /// <summary>An invented epoxy that cures at the temperature of a workshop; no product.</summary>
    public static CureKinetics InventedEpoxy { get; } = new(new(1e5, 55e3), new(2e5, 50e3), 1, 1.5, 0, 0.577) { Heat = new(450e3, 1900) };

    /// <summary>
    /// Glass and unsaturated polyester of Bogetti and Gillespie, J. Compos. Mater. 25 (1991) 239–273: 3.7·10²² per minute, 167.4 kJ/mol, orders 0.524
    /// and 1.476.
    /// </summary>
    public static CureKinetics PublishedPolyester { get; } = new(new(0, 0), new(3.7e22 / 60, 1.674e5), 0.524, 1.476, 1e-4, 0.5);

    /// <summary>A temperature that never changes.</summary>
    public static TemperatureCourse At(double celsius) => new(celsius + GasConstant.ZeroCelsius);
}

using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Verification.Tests.Settings;

/// <summary>The cloth, resin and vacuum that most problems share.</summary>
public static class Reference
{
    /// <summary>Permeability [m²].</summary>
    public const double Permeability = 1e-10;

    /// <summary>Porosity [-].</summary>
    public const double Porosity = 0.5;

    /// <summary>Thickness [m].</summary>
    public const double Thickness = 3e-3;

    /// <summary>Viscosity [Pa·s].</summary>
    public const double Viscosity = 0.2;

    /// <summary>Driving pressure [Pa].</summary>
    public const double Drive = 1e5;

    /// <summary>Drive clock per second [1/s].</summary>
    public const double ClockRate = Drive / Viscosity;

    /// <summary>A resin that gels long after every fill here.</summary>
    public static Resin Resin { get; } = new(Viscosity, gelTime: 1e7, mixToOpen: 0, density: 1100);

    /// <summary>A bag with exactly the driving pressure and a perfect vacuum: what is sealed in leaves nothing behind, as in the closed forms.</summary>
    public static Bag Bag { get; } = new(Pressure: 0, Ambient: 1e5);

    /// <summary>One zone over the whole preform.</summary>
    public static Zone Skin { get; } = Isotropic("skin", Permeability, Porosity, Thickness);

    /// <summary>A zone that is equally permeable in both directions.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="permeability">Permeability [m²].</param>
    /// <param name="porosity">Porosity [-].</param>
    /// <param name="thickness">Thickness [m].</param>
    /// <param name="area">Where it lies; null for the whole preform.</param>
    public static Zone Isotropic(string name, double permeability, double porosity, double thickness, Numerics.Geometry.Ring? area = null) =>
        new(name, area, thickness, porosity, new Permeability(permeability, permeability, permeability / 100, 0));
}

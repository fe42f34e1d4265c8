using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Laminates;

namespace InfusionSim.Physics.Panels;

/// <summary>An area of one lay-up; its numbers are those under the bag.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Area">Where it lies; null means the whole preform. Where zones overlap the last one named decides alone.</param>
/// <param name="Thickness">Thickness of the cloth [m].</param>
/// <param name="Porosity">Share of the thickness that resin can fill [-], 0.05 to 0.98.</param>
/// <param name="Permeability">How easily resin runs through it.</param>
public sealed record Zone(string Name, Ring? Area, double Thickness, double Porosity, Permeability Permeability)
{
    /// <summary>Weight of its fibre, ply by ply; empty where it is not known. It never changes the flow.</summary>
    public IReadOnlyList<FibreWeight> Fibres { get; init; } = [];
}

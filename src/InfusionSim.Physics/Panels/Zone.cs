using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Panels;

/// <summary>An area of one lay-up; its numbers are those under the bag.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Area">Where it lies; null means the whole preform. Where zones overlap the last one named decides alone.</param>
/// <param name="Thickness">Thickness of the cloth [m].</param>
/// <param name="Porosity">Share of the thickness that resin can fill [-], 0.05 to 0.98.</param>
/// <param name="Permeability">How easily resin runs through it.</param>
public sealed record Zone(string Name, Ring? Area, double Thickness, double Porosity, Permeability Permeability);

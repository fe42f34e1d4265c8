using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Panels;

/// <summary>A layer of flow mesh over the panel or a part of it; its numbers are those under the bag.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Area">Where it lies; null means the whole preform. What lies outside the cloth does not count.</param>
/// <param name="Face">On which side of the laminate.</param>
/// <param name="Thickness">Thickness [m].</param>
/// <param name="Porosity">Share of the thickness that resin can fill [-], 0.05 to 0.98.</param>
/// <param name="Permeability">How easily resin runs through it.</param>
public sealed record FlowMesh(string Name, Ring? Area, PanelFace Face, double Thickness, double Porosity, Permeability Permeability);

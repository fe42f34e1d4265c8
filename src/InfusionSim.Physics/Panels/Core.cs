using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Panels;

/// <summary>A core between two skins of the laminate, as a layer with the porosity and permeability that its grooves and holes come to.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Area">Where it lies; null means the whole preform. Outside it the skins lie on each other.</param>
/// <param name="ToolSkinShare">Share of the laminate's thickness that lies under it [-], above 0 and below 1.</param>
/// <param name="Thickness">Thickness [m].</param>
/// <param name="Porosity">Share of its volume that resin can fill: grooves and holes [-], above 0.</param>
/// <param name="Permeability">Equivalent permeability; K1 and K2 are 0 for a plain core with holes only, K3 is 0 for one without holes.</param>
public sealed record Core(string Name, Ring? Area, double ToolSkinShare, double Thickness, double Porosity, Permeability Permeability);

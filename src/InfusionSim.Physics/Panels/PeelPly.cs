namespace InfusionSim.Physics.Panels;

/// <summary>A layer of peel ply over the whole bag side of the laminate, under the mesh where there is one.</summary>
/// <param name="Thickness">Thickness [m].</param>
/// <param name="Porosity">Share of the thickness that resin can fill [-], 0.05 to 0.98.</param>
/// <param name="Permeability">How easily resin runs through it.</param>
public sealed record PeelPly(double Thickness, double Porosity, Permeability Permeability);

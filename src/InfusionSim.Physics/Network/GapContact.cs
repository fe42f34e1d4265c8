namespace InfusionSim.Physics.Network;

/// <summary>Where a feed or vent reaches into a gap.</summary>
/// <param name="Line">Index of the feed or vent in the panel's order.</param>
/// <param name="LineNode">Its node; −1 where its pressure is fixed.</param>
/// <param name="GapNode">Node of the gap.</param>
/// <param name="Conductance">Conductance between the two [m³].</param>
public readonly record struct GapContact(int Line, int LineNode, int GapNode, double Conductance);

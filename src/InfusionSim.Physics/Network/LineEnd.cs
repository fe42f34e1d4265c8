namespace InfusionSim.Physics.Network;

/// <summary>Where a line node hangs on the fixed pressure of a feed or of a vent.</summary>
/// <param name="Node">The line node.</param>
/// <param name="Conductance">Conductance between the two [m³].</param>
/// <param name="Line">Index of the feed or vent in the panel's order.</param>
public readonly record struct LineEnd(int Node, double Conductance, int Line);

using InfusionSim.Numerics.Geometry;

namespace InfusionSim.Physics.Panels;

/// <summary>The cloth, the line plan and the squares it is computed on: all that decides where the resin goes.</summary>
/// <param name="Region">Outline and cut-outs of the cloth.</param>
/// <param name="Zones">Lay-ups, at least one; where two overlap the last one named decides alone.</param>
/// <param name="Feeds">Where resin comes from, at least one.</param>
/// <param name="Vents">Where air is drawn from; may be empty.</param>
/// <param name="TimingMarks">Places whose arrival is named; may be empty.</param>
/// <param name="CellSize">Side of a square [m].</param>
public sealed record Panel(
    Region Region,
    IReadOnlyList<Zone> Zones,
    IReadOnlyList<Feed> Feeds,
    IReadOnlyList<Vent> Vents,
    IReadOnlyList<TimingMark> TimingMarks,
    double CellSize);

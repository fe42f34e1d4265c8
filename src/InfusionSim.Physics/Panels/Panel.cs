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
    double CellSize)
{
    /// <summary>Layers of flow mesh; where two on one side overlap the last one named decides alone.</summary>
    public IReadOnlyList<FlowMesh> FlowMeshes { get; init; } = [];

    /// <summary>Cores; where two overlap the last one named decides alone.</summary>
    public IReadOnlyList<Core> Cores { get; init; } = [];

    /// <summary>Peel ply on the bag side as a layer of its own; null for none.</summary>
    public PeelPly? PeelPly { get; init; }

    /// <summary>Open channels.</summary>
    public IReadOnlyList<Gap> Gaps { get; init; } = [];

    /// <summary>Pots that feeds name.</summary>
    public IReadOnlyList<Pot> Pots { get; init; } = [];

    /// <summary>Layers the laminate is cut into through its thickness [-], at least 1; null lets the lag behind a mesh decide.</summary>
    public int? SubLayers { get; init; }

    /// <summary>How the panel lies; null for level.</summary>
    public Slope? Slope { get; init; }
}

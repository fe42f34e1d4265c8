using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Layers;

/// <summary>One layer of a panel through its thickness.</summary>
/// <param name="Kind">What it is made of.</param>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Zones">What lies where in it, in the order named; where two overlap the last one decides alone. Their thickness is that of this layer.</param>
public sealed record Layer(LayerKind Kind, string Name, IReadOnlyList<Zone> Zones)
{
    /// <summary>Share of the laminate's thickness that it takes [-]; 1 for the whole laminate and for every other kind.</summary>
    public double ThicknessShare { get; init; } = 1;

    /// <summary>Whether it may leave places of the panel bare.</summary>
    public bool MayBeBare => Kind is LayerKind.ToolSideMesh or LayerKind.BagSideMesh or LayerKind.Core;

    /// <summary>Whether what it holds stays in the part: laminate and core, not mesh and peel ply.</summary>
    public bool StaysInPart => Kind is LayerKind.Laminate or LayerKind.Core;
}

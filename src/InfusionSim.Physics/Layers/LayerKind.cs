namespace InfusionSim.Physics.Layers;

/// <summary>What a layer of a panel is made of.</summary>
public enum LayerKind
{
    /// <summary>Flow mesh between the mould and the laminate.</summary>
    ToolSideMesh,

    /// <summary>The laminate or a part of its thickness.</summary>
    Laminate,

    /// <summary>A core with grooves or holes; outside it the skins lie on each other.</summary>
    Core,

    /// <summary>Peel ply on the laminate.</summary>
    PeelPly,

    /// <summary>Flow mesh under the bag.</summary>
    BagSideMesh,
}

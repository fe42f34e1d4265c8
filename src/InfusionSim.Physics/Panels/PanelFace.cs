namespace InfusionSim.Physics.Panels;

/// <summary>A side of the laminate.</summary>
public enum PanelFace
{
    /// <summary>Towards the bag: up.</summary>
    BagSide,

    /// <summary>Towards the mould: down.</summary>
    ToolSide,
}

namespace InfusionSim.Physics.Network;

/// <summary>What a node outside the cloth belongs to.</summary>
public enum LinePart
{
    /// <summary>The line of a feed, where it lies on the cloth.</summary>
    Feed,

    /// <summary>The hose of a feed.</summary>
    FeedHose,

    /// <summary>The hose of a pot, up to its T-piece.</summary>
    PotHose,

    /// <summary>The line of a vent, where it lies on the cloth.</summary>
    Vent,

    /// <summary>The hose of a vent.</summary>
    VentHose,

    /// <summary>An open channel.</summary>
    Gap,
}

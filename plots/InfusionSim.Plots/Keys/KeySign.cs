namespace InfusionSim.Plots.Keys;

/// <summary>A sign that a key explains.</summary>
internal enum KeySign
{
    /// <summary>A feed.</summary>
    Feed,

    /// <summary>A vent that passes resin.</summary>
    Vent,

    /// <summary>A vent line that holds resin.</summary>
    Membrane,

    /// <summary>A vent fitting that holds resin.</summary>
    MembraneFitting,

    /// <summary>The place where a hose joins its line.</summary>
    HoseJoint,

    /// <summary>The border of a lay-up that covers only a part of the panel.</summary>
    LayUp,

    /// <summary>A gap that the resin races along.</summary>
    Gap,

    /// <summary>A flow mesh on the bag side.</summary>
    Mesh,

    /// <summary>A flow mesh on the tool side.</summary>
    MeshOnToolSide,

    /// <summary>A core between two skins.</summary>
    Core,

    /// <summary>The direction in which turned cloth runs best.</summary>
    Fibres,

    /// <summary>A timing mark.</summary>
    TimingMark,

    /// <summary>The place that fills last.</summary>
    LastPlace,

    /// <summary>The place where one side stays longest behind the other.</summary>
    LargestLag,

    /// <summary>A dry spot.</summary>
    DrySpot,

    /// <summary>Cloth that is never reached.</summary>
    NeverReached,

    /// <summary>Where the front stands.</summary>
    Front,

    /// <summary>Wet cloth.</summary>
    Wet,

    /// <summary>Cloth that is dry so far.</summary>
    Dry,
}

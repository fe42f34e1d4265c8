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

    /// <summary>A timing mark.</summary>
    TimingMark,

    /// <summary>The place that fills last.</summary>
    LastPlace,

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

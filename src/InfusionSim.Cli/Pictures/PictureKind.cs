namespace InfusionSim.Cli.Pictures;

/// <summary>Pictures that can be drawn.</summary>
public enum PictureKind
{
    /// <summary>When the front passes each place, on the bag side where there are layers.</summary>
    Front,

    /// <summary>When the front passes each place on the tool side.</summary>
    ToolSide,

    /// <summary>The fronts of bag side and tool side next to each other.</summary>
    BothSides,

    /// <summary>How long the tool side is behind the bag side.</summary>
    Lag,

    /// <summary>Pressure along each line with a bore or a hose.</summary>
    Lines,

    /// <summary>How fast the front runs when it comes to each place.</summary>
    Speed,

    /// <summary>Capillary number of the front when it comes to each place.</summary>
    Capillary,

    /// <summary>What is left until gel when the front comes to each place.</summary>
    GelMargin,

    /// <summary>Resin pressure at one moment.</summary>
    Pressure,

    /// <summary>How much is full against time.</summary>
    Progress,

    /// <summary>Moments side by side.</summary>
    Strip,

    /// <summary>The front on the move.</summary>
    Animation,
}

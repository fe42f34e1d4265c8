namespace InfusionSim.Cli.Pictures;

/// <summary>Pictures that can be drawn.</summary>
public enum PictureKind
{
    /// <summary>When the front passes each place.</summary>
    Front,

    /// <summary>Resin pressure at one moment.</summary>
    Pressure,

    /// <summary>How much is full against time.</summary>
    Progress,

    /// <summary>Moments side by side.</summary>
    Strip,

    /// <summary>The front on the move.</summary>
    Animation,
}

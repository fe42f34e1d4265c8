namespace InfusionSim.Physics.Forecasts;

/// <summary>How an infusion ends.</summary>
public enum Outcome
{
    /// <summary>The resin reaches every place before it gels and leaves no dry spot above the goal.</summary>
    Fills,

    /// <summary>A dry spot larger than the goal stays.</summary>
    TrapsAir,

    /// <summary>The resin comes to rest before the last place.</summary>
    StopsShort,

    /// <summary>The pot is empty before the last place is full.</summary>
    PotRunsDry,

    /// <summary>The resin gels before the last place is full.</summary>
    GelsFirst,
}

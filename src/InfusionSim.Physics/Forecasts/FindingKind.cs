namespace InfusionSim.Physics.Forecasts;

/// <summary>What a finding speaks of, worst first.</summary>
public enum FindingKind
{
    /// <summary>The resin gels before the last place is full.</summary>
    GelsFirst,

    /// <summary>The pot is empty before the last place is full.</summary>
    PotRunsDry,

    /// <summary>The resin comes to rest before the last place.</summary>
    StopsShort,

    /// <summary>A dry spot larger than the goal stays.</summary>
    TrapsAir,

    /// <summary>Resin is in a vent before the cloth is full.</summary>
    VentReachedEarly,

    /// <summary>It gels first in the slow case, or the gel margin is below the goal.</summary>
    ThinMargin,

    /// <summary>More resin leaves through the vents than the goal allows.</summary>
    ResinOutAboveGoal,

    /// <summary>The tool side fills well after the bag side.</summary>
    ToolSideBehind,

    /// <summary>The far end of a feed line holds less than 95 % of the pressure at its start.</summary>
    LineEndWeak,

    /// <summary>A component of the resin may boil under this vacuum.</summary>
    MayBoil,

    /// <summary>The largest dry spot allowed is smaller than four squares, or a passage of the drawing is too narrow for them.</summary>
    GoalFinerThanResolution,
}

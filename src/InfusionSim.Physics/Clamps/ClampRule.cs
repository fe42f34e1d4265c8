namespace InfusionSim.Physics.Clamps;

/// <summary>What is to be done at one moment: a clamp is turned, or the vacuum is changed.</summary>
/// <param name="When">When.</param>
/// <param name="IsVent">Whether the clamp is that of a vent.</param>
/// <param name="Line">Index of the feed or vent in the panel's order; −1 for the vacuum.</param>
/// <param name="Value">How far open the clamp is from then on [-], or the absolute pressure under the bag [Pa].</param>
public sealed record ClampRule(Moment When, bool IsVent, int Line, double Value)
{
    /// <summary>Whether it changes the vacuum.</summary>
    public bool IsOfBag => Line < 0;
}

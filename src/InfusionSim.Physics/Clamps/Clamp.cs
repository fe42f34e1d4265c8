namespace InfusionSim.Physics.Clamps;

/// <summary>The clamp on the hose of a feed or a vent, and what is done with it.</summary>
/// <param name="OpenAtStart">How far open it is when the first feed opens: share of the hose's conductance that it leaves [-], 0 shut to 1 open.
/// Between the two it needs a hose.</param>
/// <param name="Steps">Turns of the clamp; each is done once, when its moment comes first.</param>
public sealed record Clamp(double OpenAtStart, IReadOnlyList<ClampStep> Steps)
{
    /// <summary>A clamp that nobody touches.</summary>
    public static Clamp AlwaysOpen { get; } = new(1, []);

    /// <summary>Whether it is open all the time.</summary>
    public bool IsAlwaysOpen => OpenAtStart == 1 && Steps.All(static step => step.OpenFraction == 1);
}
